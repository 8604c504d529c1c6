using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Rounds;
using NodaTime;

namespace FermentWatch.Kitchen.Occasions;

/// <summary>The household at one moment, as the rules of occasions look at it.</summary>
public sealed class OccasionFacts
{
    private TastingPlan? _tasting;

    public required Household Household { get; init; }

    public required Instant Now { get; init; }

    /// <summary>Kept jars, whole.</summary>
    public required IReadOnlyList<Jar> Jars { get; init; }

    public required IReadOnlyDictionary<Guid, Place> Places { get; init; }

    /// <summary>The latest forecasts by jar.</summary>
    public required IReadOnlyDictionary<Guid, JarForecast> Forecasts { get; init; }

    /// <summary>Closed quarter-hour means of the last days.</summary>
    public TemperatureHistory Temperatures { get; init; } = TemperatureHistory.Empty;

    public Roster Roster { get; init; } = new([], [], []);

    /// <summary>Sensors in service that a person should look at.</summary>
    public IReadOnlyList<SensorConcern> Sensors { get; init; } = [];

    /// <summary>The rounds of the last days, for what was asked on them.</summary>
    public IReadOnlyList<Round> Rounds { get; init; } = [];

    /// <summary>When people are asked to taste.</summary>
    public TastingPlan Tasting => _tasting ??= new TastingPlan(Jars, Forecasts, Household, Rounds);

    public DateTimeZone Zone => Household.Zone;

    public LocalDate Today => Now.InZone(Zone).Date;

    /// <summary>Whether today's morning round is due already.</summary>
    public bool AfterMorning => Now.InZone(Zone).TimeOfDay >= Household.RoundAt;

    /// <summary>Whether this evening's reminder is due already.</summary>
    public bool AfterEvening => Now.InZone(Zone).TimeOfDay >= Household.EveningAt;

    /// <summary>Jars that ferment.</summary>
    public IEnumerable<Jar> Fermenting => Jars.Where(jar => jar.Stage == JarStage.Fermenting);

    /// <summary>The same moment with one jar alone.</summary>
    public OccasionFacts Of(Jar jar) => new()
    {
        Household = Household, Now = Now, Jars = [jar], Places = Places, Forecasts = Forecasts, Temperatures = Temperatures, Roster = Roster,
        Sensors = Sensors, Rounds = Rounds,
    };

    /// <summary>Days after packing, 0 on the date of packing.</summary>
    public int DayOf(Jar jar) => Period.DaysBetween(DateOf(jar.PackedAt), Today);

    public LocalDate DateOf(Instant instant) => instant.InZone(Zone).Date;
}
