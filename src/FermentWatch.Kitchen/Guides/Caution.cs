namespace FermentWatch.Kitchen.Guides;

/// <summary>A caution shown where a decision is made.</summary>
/// <param name="Key">Stable name, for tests and links.</param>
/// <param name="Text">The caution in one or two sentences.</param>
/// <param name="Source">Who says so, or that it is common practice.</param>
public sealed record Caution(string Key, string Text, string Source);
