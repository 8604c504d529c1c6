namespace FermentWatch.Kitchen.Notices;

/// <summary>A way to say "all well" without signing in: for one person, for these jars, on this date, once.</summary>
/// <param name="Shelf">Name of the shelf; null for the whole round.</param>
/// <param name="Path">Address on this service, from the first slash. What is sent there by GET changes nothing.</param>
public sealed record AnswerLink(string? Shelf, string Path);
