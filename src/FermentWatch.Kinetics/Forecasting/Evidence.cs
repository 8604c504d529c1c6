using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Forecasting;

/// <summary>What was seen of one jar, in an order of its own, with the times at which the members must be looked at.</summary>
internal sealed class Evidence
{
    /// <param name="readings">pH.</param>
    /// <param name="titrations">Acidity.</param>
    /// <param name="tastes">Tastes, measured on <paramref name="scale"/>.</param>
    /// <param name="gas">Gas.</param>
    /// <param name="scale">What the household chose.</param>
    public Evidence(
        IReadOnlyList<PhReading> readings, IReadOnlyList<AcidityReading> titrations, IReadOnlyList<TasteReading> tastes,
        IReadOnlyList<GasReading> gas, TasteScale scale)
    {
        Readings = [.. readings.OrderBy(reading => reading.Day).ThenBy(reading => reading.Ph).ThenBy(reading => reading.Method)];
        Titrations = [.. titrations.OrderBy(titration => titration.Day).ThenBy(titration => titration.PercentLactic)];
        Tastes = [.. tastes.OrderBy(taste => taste.Day).ThenBy(taste => taste.Verdict)];
        Gas = [.. gas.OrderBy(each => each.Day).ThenBy(each => each.Seen)];
        Scale = scale;
        Days =
        [
            .. Readings.Select(reading => reading.Day).Concat(Titrations.Select(titration => titration.Day)).Concat(Tastes.Select(taste =>
                taste.Day))
                .Concat(Gas.Select(each => each.Day)).Select(Quarter).Distinct().Order(),
        ];
    }

    /// <summary>What was measured: all that a line may rest on.</summary>
    public Evidence(IReadOnlyList<PhReading> readings, IReadOnlyList<AcidityReading>? titrations = null)
        : this(readings, titrations ?? [], [], [], new TasteScale(null))
    {
    }

    public IReadOnlyList<PhReading> Readings { get; }

    public IReadOnlyList<AcidityReading> Titrations { get; }

    public IReadOnlyList<TasteReading> Tastes { get; }

    public IReadOnlyList<GasReading> Gas { get; }

    /// <summary>What tastes are measured on.</summary>
    public TasteScale Scale { get; }

    /// <summary>Days the members are looked at, rising.</summary>
    public double[] Days { get; }

    /// <summary>Place of a day among <see cref="Days"/>.</summary>
    public int TimeOf(double day) => Array.BinarySearch(Days, Quarter(day));

    private static double Quarter(double day) => Math.Round(day * TemperatureCourse.StepsPerDay) / TemperatureCourse.StepsPerDay;
}
