namespace FermentWatch.Web.Api.Answers;

/// <summary>One thing that went into a jar.</summary>
/// <param name="Produce">Its name.</param>
/// <param name="MassKilograms">Prepared mass.</param>
public sealed record PortionAnswer(string Produce, double MassKilograms);
