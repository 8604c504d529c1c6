using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>What tasting comes to for a jar: it stands for its lot, or another of the lot stands for it.</summary>
/// <param name="By">Number of the jar that is tasted for the lot.</param>
/// <param name="Lot">Numbers of the jars it stands for, itself among them.</param>
/// <param name="From">The first date worth tasting; null where tasting is over for the lot: right, past it, or decided.</param>
/// <param name="PastFrom">The date from which it is a decision rather than a taste; null where that is not known.</param>
/// <param name="SaidRight">Whether the last taste of the lot said right or past it.</param>
/// <param name="Kind">What is asked on the date in question.</param>
public sealed record TasteAsk(int By, IReadOnlyList<int> Lot, LocalDate? From, LocalDate? PastFrom, bool SaidRight, TasteAskKind Kind)
{
    /// <summary>Numbers of the jars that need no tasting, since it stands for them.</summary>
    public IReadOnlyList<int> Others { get; } = [.. Lot.Where(number => number != By)];

    /// <summary>Whether its tasting days are over on a date, by expectation.</summary>
    public bool IsPast(LocalDate date) => PastFrom <= date;
}
