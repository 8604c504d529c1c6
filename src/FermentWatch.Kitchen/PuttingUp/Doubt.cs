namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>Something that is merely odd: asked about once, taken when whoever typed it says that it is right.</summary>
/// <param name="Field">The field it is about.</param>
/// <param name="Question">One plain question, with what was probably meant where that can be told.</param>
public sealed record Doubt(string Field, string Question);
