namespace FermentWatch.Kinetics;

/// <summary>Words at the beginning of a sentence.</summary>
public static class Sentence
{
    /// <summary>The words with their first letter large; at least one letter.</summary>
    public static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
