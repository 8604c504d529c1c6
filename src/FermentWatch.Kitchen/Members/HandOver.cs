using NodaTime;

namespace FermentWatch.Kitchen.Members;

/// <summary>On one date somebody else does the round, alone.</summary>
public sealed class HandOver
{
    /// <summary>The date; the key.</summary>
    public required LocalDate Date { get; init; }

    /// <summary>Who does it instead.</summary>
    public required string Person { get; set; }

    /// <summary>Who handed it over.</summary>
    public required string By { get; set; }
}

/// <summary>A span of dates on which nobody is asked to look: the household is away.</summary>
public sealed class RoundPause
{
    public required Guid Id { get; init; }

    /// <summary>The first date without a round.</summary>
    public required LocalDate From { get; init; }

    /// <summary>The date on which rounds are held again, after <see cref="From"/>; the same date where the pause was taken back before it
    /// began.</summary>
    public required LocalDate Until { get; set; }

    /// <summary>Who said so.</summary>
    public required string By { get; init; }

    /// <summary>Whether a date lies within.</summary>
    public bool Holds(LocalDate date) => date >= From && date < Until;
}
