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

/// <summary>Reads a course between its points, straight from one to the next.</summary>
public static class CourseReading
{
    /// <summary>The course at a day; before its first and after its last point it stays as there.</summary>
    /// <param name="course">At least one point, by day.</param>
    /// <param name="day">Days after packing.</param>
    public static CoursePoint At(IReadOnlyList<CoursePoint> course, double day)
    {
        int next = 0;
        while (next < course.Count && course[next].Day < day)
            next++;
        if (next == 0 || next == course.Count)
            return course[Math.Min(next, course.Count - 1)];
        (CoursePoint a, CoursePoint b) = (course[next - 1], course[next]);
        double share = (day - a.Day) / (b.Day - a.Day);
        return new CoursePoint(day, Between(a.JarCelsius, b.JarCelsius, share), Between(a.Ph, b.Ph, share),
            Between(a.AcidityPercentLactic, b.AcidityPercentLactic, share), Between(a.SournessP50, b.SournessP50, share),
            Between(a.CentrePh, b.CentrePh, share));
    }

    private static Quantiles Between(Quantiles a, Quantiles b, double share) =>
        new(Between(a.P10, b.P10, share), Between(a.P50, b.P50, share), Between(a.P90, b.P90, share));

    private static double Between(double a, double b, double share) => a + (share * (b - a));
}
