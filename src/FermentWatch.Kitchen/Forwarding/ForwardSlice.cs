namespace FermentWatch.Kitchen.Forwarding;

/// <summary>A piece of a log in the order in which it was written, whatever the times it tells of.</summary>
/// <param name="Entries">What is to be passed on, possibly nothing.</param>
/// <param name="Cursor">Where the next slice begins: everything to be passed on up to there is in this slice or before it.</param>
public sealed record ForwardSlice<T>(IReadOnlyList<T> Entries, long Cursor);
