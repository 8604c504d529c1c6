namespace FermentWatch.Kitchen.Jars;

/// <summary>One thing that went into a jar.</summary>
/// <param name="Produce">Its name in the catalogue of produce, such as <c>cabbage</c>, or a seasoning's own name.</param>
/// <param name="MassKilograms">Prepared mass, above zero.</param>
public sealed record Portion(string Produce, double MassKilograms);
