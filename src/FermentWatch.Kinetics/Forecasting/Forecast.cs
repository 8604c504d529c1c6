using FermentWatch.Kinetics.Household;
using FermentWatch.Kinetics.Observation;

namespace FermentWatch.Kinetics.Forecasting;

/// <summary>What the ensemble expects of one jar.</summary>
public sealed record Forecast
{
    /// <summary>Names the equations, parameters and prior that made it; changes whenever the numbers can.</summary>
    public required string ModelVersion { get; init; }

    /// <summary>The course: day 0, every step, and the last day.</summary>
    public required IReadOnlyList<CoursePoint> Course { get; init; }

    /// <summary>Day at which the brine passes pH 4.6. Moved by recipe, temperature and measured pH only.</summary>
    public required PassageDays AcidLine { get; init; }

    /// <summary>Day at which the brine passes pH 4.0.</summary>
    public required PassageDays Ph4 { get; init; }

    /// <summary>Day at which the middle of the largest piece passes pH 4.6.</summary>
    public required PassageDays CentreAcidLine { get; init; }

    /// <summary>Day at which the middle of the largest piece passes pH 4.0.</summary>
    public required PassageDays CentrePh4 { get; init; }

    /// <summary>Day at which the target is reached; null without a target.</summary>
    public required PassageDays? Target { get; init; }

    /// <summary>What the household's finished jars taught, as it was used; null where nothing did.</summary>
    public HouseholdPrior? Household { get; init; }

    /// <summary>Readings the model cannot explain.</summary>
    public required IReadOnlyList<FlaggedReading> Flagged { get; init; }

    /// <summary>What was assumed or widened, in plain lines: gaps in the temperature, temperatures out of range, and the like.</summary>
    public required IReadOnlyList<string> Remarks { get; init; }
}

/// <summary>The jar at one time.</summary>
/// <param name="Day">Days since packing.</param>
/// <param name="JarCelsius">Expected temperature inside the jar.</param>
/// <param name="Ph">pH of the brine.</param>
/// <param name="AcidityPercentLactic">Titratable acidity to pH 8.2, native acids included, as per cent lactic acid.</param>
/// <param name="SournessP50">Median sourness index: protonated acids and free hydrogen ion, mmol/L.</param>
/// <param name="CentrePh">pH in the middle of the largest piece.</param>
public sealed record CoursePoint(double Day, double JarCelsius, Quantiles Ph, Quantiles AcidityPercentLactic, double SournessP50,
    Quantiles CentrePh);

/// <summary>How fast gas is made at one time.</summary>
/// <param name="Day">Days since packing.</param>
/// <param name="MolesPerLitreAndDay">Carbon dioxide of the heterofermentative starters, mol per litre of brine and day; what stays dissolved is in
/// it.</param>
public sealed record GasPoint(double Day, Quantiles MolesPerLitreAndDay);

/// <summary>Median and 80 % interval of a quantity, over the members of the ensemble.</summary>
/// <param name="P10">One member in ten lies below.</param>
/// <param name="P50">Half of the members lie below.</param>
/// <param name="P90">Nine members in ten lie below.</param>
public readonly record struct Quantiles(double P10, double P50, double P90);

/// <summary>
/// The day, counted from packing, at which a level is reached (of a pH, for the last time): quantiles over the members' own passages, never
/// the passage of the median path. Null where that share of the members does not get there within the span.
/// </summary>
/// <param name="P10">The early end: one member in ten is there by then.</param>
/// <param name="P50">Half of the members are there by then.</param>
/// <param name="P90">The late end: nine members in ten are there by then.</param>
public readonly record struct PassageDays(double? P10, double? P50, double? P90);

/// <summary>A reading the model cannot explain: shown, not swallowed.</summary>
/// <param name="Reading">The reading as it came.</param>
/// <param name="Reason">What does not fit, in one line.</param>
/// <param name="WorseThanExpected">The pH is higher than expected: such a reading is never discounted.</param>
public sealed record FlaggedReading(PhReading Reading, string Reason, bool WorseThanExpected);

/// <summary>The quantity a target is set on.</summary>
public enum TargetKind
{
    /// <summary>pH of the brine, reached from above.</summary>
    Ph,

    /// <summary>Titratable acidity in per cent lactic, reached from below.</summary>
    AcidityPercentLactic,

    /// <summary>Sourness index in mmol/L, reached from below.</summary>
    Sourness,
}
