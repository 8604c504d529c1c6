using FermentWatch.Kinetics.Forecasting;

namespace FermentWatch.Acts.Jars;

/// <summary>How far a jar is expected to be on its way from its first acidity to the one its household wants, 0 to 1.</summary>
/// <param name="P10">One member in ten is not yet this far.</param>
/// <param name="P50">The middle.</param>
/// <param name="P90">One member in ten is further.</param>
public sealed record JarProgress(double P10, double P50, double P90)
{
    /// <summary>The progress at a day of a course.</summary>
    public static JarProgress At(IReadOnlyList<CoursePoint> course, double day, double targetPercentLactic)
    {
        Quantiles acid = CourseReading.At(course, day).AcidityPercentLactic;
        double start = course[0].AcidityPercentLactic.P50;
        double Share(double percent) => Math.Clamp((percent - start) / Math.Max(0.05, targetPercentLactic - start), 0, 1);
        return new(Share(acid.P10), Share(acid.P50), Share(acid.P90));
    }
}
