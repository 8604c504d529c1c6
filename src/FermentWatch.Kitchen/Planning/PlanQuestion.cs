using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Jars;
using NodaTime;

namespace FermentWatch.Kitchen.Planning;

/// <summary>What is asked of a plan, read.</summary>
public sealed record PlanQuestion
{
    public required LocalDate Today { get; init; }

    public required Vegetable Vegetable { get; init; }

    /// <summary>Per cent of vegetables and added water together.</summary>
    public required double SaltPercent { get; init; }

    /// <summary>How sour it should be.</summary>
    public required Sourness Target { get; init; }

    /// <summary>A serving, litres at the table.</summary>
    public required double ServingLitres { get; init; }

    /// <summary>Servings a week, all who eat together.</summary>
    public required double ServingsAWeek { get; init; }

    /// <summary>How many eat.</summary>
    public required int Eaters { get; init; }

    /// <summary>The first day it is eaten.</summary>
    public required LocalDate From { get; init; }

    /// <summary>The last day it is eaten.</summary>
    public required LocalDate Until { get; init; }

    /// <summary>Where it works.</summary>
    public required string Place { get; init; }

    /// <summary>What is expected there.</summary>
    public required TypicalRoom Room { get; init; }

    /// <summary>Where it is kept.</summary>
    public required string Store { get; init; }

    /// <summary>What is expected there.</summary>
    public required TypicalRoom StoreRoom { get; init; }

    /// <summary>How many jars of which size fit into the store.</summary>
    public required Vessels StoreHolds { get; init; }

    /// <summary>Vessels there are, those in use among them.</summary>
    public required IReadOnlyList<Vessels> Vessels { get; init; }

    /// <summary>Most vessels filled on one day.</summary>
    public required int VesselsADay { get; init; }

    /// <summary>Days on which people have time.</summary>
    public required IReadOnlySet<IsoDayOfWeek> Days { get; init; }

    /// <summary>Share of the jars that is lost, 0 to 0.5.</summary>
    public required double LossShare { get; init; }

    /// <summary>A day for which a jar should be ready; null where none is asked.</summary>
    public LocalDate? Feast { get; init; }

    /// <summary>Days on which nobody is there.</summary>
    public IReadOnlyList<Absence> Away { get; init; } = [];

    /// <summary>A month that may be warmer; null where none is thought of.</summary>
    public WarmMonth? Warm { get; init; }

    /// <summary>Days without power in the store that are thought of; 0 where none.</summary>
    public int PowerOutDays { get; init; }

    /// <summary>Litres eaten in a day.</summary>
    public double LitresADay => ServingsAWeek * ServingLitres / 7;

    /// <summary>Days from today to a date; below 0 before.</summary>
    public int Day(LocalDate date) => Period.DaysBetween(Today, date);

    /// <summary>The date so many days from today.</summary>
    public LocalDate Date(int day) => Today.PlusDays(day);

    /// <summary>The first day on which somebody is there, from a day on.</summary>
    public int AtHome(int day)
    {
        while (Away.FirstOrDefault(absence => absence.Holds(Date(day))) is { } absence)
            day = Day(absence.Until);
        return day;
    }

    /// <summary>One litre of vessel as the model takes it.</summary>
    public JarRecipe Recipe => JarRecipe.Of(Vegetable, Vegetable.UsualCut, SaltPercent) with
    {
        AddedWaterKilograms = VesselFill.Of(1, Vegetable.UsualCut) is { WaterKilogramsPerLitre: var water and > 0, UsualKilogramsPerLitre: var usual }
            ? water / usual : 0,
    };
}

/// <summary>Days on which nobody is there.</summary>
/// <param name="From">The first.</param>
/// <param name="Until">The day of coming back, after it.</param>
public sealed record Absence(LocalDate From, LocalDate Until)
{
    /// <summary>Whether nobody is there on a date.</summary>
    public bool Holds(LocalDate date) => date >= From && date < Until;
}

/// <summary>A month that is warmer than expected, in whatever year.</summary>
/// <param name="Month">1 to 12.</param>
/// <param name="ByCelsius">By how much; below 0 colder.</param>
public sealed record WarmMonth(int Month, double ByCelsius);
