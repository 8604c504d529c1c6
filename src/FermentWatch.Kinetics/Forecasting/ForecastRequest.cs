using FermentWatch.Kinetics.Household;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Forecasting;

/// <summary>Everything a forecast depends on. The same request gives the same bits, whatever the order of its readings.</summary>
public sealed record ForecastRequest
{
    /// <summary>What went in.</summary>
    public required JarRecipe Recipe { get; init; }

    /// <summary>The temperature from packing on: what was, then what may be.</summary>
    public required TemperatureCourse Temperatures { get; init; }

    /// <summary>pH measured so far, in any order.</summary>
    public IReadOnlyList<PhReading> Readings { get; init; } = [];

    /// <summary>Titrations so far, in any order.</summary>
    public IReadOnlyList<AcidityReading> Titrations { get; init; } = [];

    /// <summary>Tastes so far, in any order. They move the day of a sourness or acidity target, never a line.</summary>
    public IReadOnlyList<TasteReading> Tastes { get; init; } = [];

    /// <summary>Gas seen or not, in any order. It moves the day of a sourness or acidity target, never a line.</summary>
    public IReadOnlyList<GasReading> Gas { get; init; } = [];

    /// <summary>What this household's finished jars taught; null: the published prior, and the target is meant to the letter until somebody
    /// tastes.</summary>
    public HouseholdPrior? Household { get; init; }

    /// <summary>What the jar is waited for.</summary>
    public ForecastTarget? Target { get; init; }

    /// <summary>Members of the ensemble, 16 to 65536.</summary>
    public int Members { get; init; } = 256;

    /// <summary>Key of the random numbers: the jar's own.</summary>
    public ulong Seed { get; init; } = 1;

    /// <summary>Span from packing, days, above 0 and at most 366.</summary>
    public double Days { get; init; } = 30;

    /// <summary>Step of the course, days, at least a quarter of an hour.</summary>
    public double EveryDays { get; init; } = 1;

    /// <summary>Everything that keeps the request from an answer; empty when it can be computed.</summary>
    public IReadOnlyList<Refusal> Check() => RequestRules.Check(this);
}
