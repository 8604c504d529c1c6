using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Troubles;
using NodaTime;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>One jar on one date, as everything that speaks of it has it.</summary>
/// <param name="Jar">The jar.</param>
/// <param name="Day">Days after packing, 0 on the date of packing.</param>
/// <param name="LookFors">What to look for and do, in order; nothing where it does not ferment.</param>
/// <param name="Opening">Whether it has to be opened.</param>
/// <param name="Trouble">The trouble for which it is on the closer watch; null if it is not.</param>
/// <param name="DaysNotLookedAt">Whole dates before this one on which nobody answered for it.</param>
/// <param name="LookedAtToday">Whether somebody has answered for it on this date.</param>
public sealed record RoundJar(
    Jar Jar, int Day, IReadOnlyList<LookFor> LookFors, bool Opening, Sighting? Trouble, int DaysNotLookedAt, bool LookedAtToday)
{
    /// <summary>The date it is about.</summary>
    public LocalDate Date { get; init; }

    /// <summary>What trouble means for it.</summary>
    public TroubleState State { get; init; } = new(null, false, false);

    /// <summary>Where it stands against the acid line.</summary>
    public AcidLineReport Line { get; init; } = new(AcidLineState.NotMeasured, null, false, AcidLineAlarm.None);

    /// <summary>What tasting comes to; null where that is no question.</summary>
    public TasteAsk? Taste { get; init; }

    /// <summary>The one thing to do with it.</summary>
    public NextStep Step { get; init; } = NextStep.Look(opening: true);

    /// <summary>Its trouble in a few words for a child or a guest, who looks and says; an adult settles. Null where nothing is wrong.</summary>
    public string? TroubleForAChild => Step.Kind > StepKind.SeeTo ? null : State.Handled is not null ? Step.InBrief
        : $"{Step.Sign}: {(Step.Urgent ? "call an adult, do not open" : "show an adult")}";
}

/// <summary>What is to be looked at on one date, by shelf in shelf order.</summary>
public sealed record RoundSheet(LocalDate Date, IReadOnlyList<RoundShelf> Shelves)
{
    /// <summary>Jars that are asked to be tasted, by id, each for its lot.</summary>
    public IReadOnlyList<Guid> TasteAsked { get; init; } = [];

    /// <summary>Jars that are asked about as a decision, by id, each for its lot.</summary>
    public IReadOnlyList<Guid> DecideAsked { get; init; } = [];

    public IEnumerable<RoundJar> Jars => Shelves.SelectMany(shelf => shelf.Jars);
}

/// <summary>The jars of one place, by number.</summary>
public sealed record RoundShelf(Place Place, IReadOnlyList<RoundJar> Jars);
