using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Service.Pages.Rounds;

/// <summary>What is written into a box of the week sheet.</summary>
/// <param name="Word">As it stands on paper.</param>
/// <param name="Seen">What it says was seen; null for all well.</param>
public sealed record WeekMark(string Word, SightingKind? Seen)
{
    /// <summary>Every mark, all well first.</summary>
    public static readonly IReadOnlyList<WeekMark> All =
    [
        new("✓", null), new("up", SightingKind.PiecesUp), new("film", SightingKind.Film), new("fuzz", SightingKind.FuzzOrUnsure),
        new("low", SightingKind.BrineLow), new("gas", SightingKind.Gas), new("smell", SightingKind.OffSmell), new("slime", SightingKind.Slime),
    ];
}
