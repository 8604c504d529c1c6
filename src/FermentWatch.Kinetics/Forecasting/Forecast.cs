using FermentWatch.Kinetics.Household;

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
