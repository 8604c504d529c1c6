using FermentWatch.Kinetics.Forecasting;

namespace FermentWatch.Acts.Jars;

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
