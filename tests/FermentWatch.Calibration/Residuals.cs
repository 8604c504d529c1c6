using FermentWatch.Kinetics.Guilds;
using FermentWatch.Reference.Tests.Published;

namespace FermentWatch.Calibration;

/// <summary>How far an answer is from its row, in units of what the row leaves open.</summary>
internal static class Residuals
{
    /// <summary>Residuals a row gives: of its value, and of the day its value is reached.</summary>
    public const int PerRow = 2;

    /// <summary>Kraut and kimchi over all temperatures, what most households make, weigh more than single jars.</summary>
    private const double StapleWeight = 1.8;

    private const double GrowthLnError = 0.5;
    private const double UnseenRatePerHour = 1e-4;
    private const double DayError = 0.25;
    private const double MostDayResidual = 2;

    public static void Of(PublishedCourse row, CourseAnswer answer, Span<double> residuals)
    {
        double weight = row.Status == "memory" ? 0.6 : row.IsStaple ? StapleWeight : 1;
        residuals[0] = row.Quantity == "ripe_day" ? 0 : weight * (answer.Value - row.Middle) / ValueError(row);
        residuals[1] = row.Quantity == "lab_log10_cfu_per_ml" ? 0 : weight * DayResidual(row, answer);
    }

    /// <summary>Residual of a growth row: its logarithm, or, where nothing grew, the rate against one that could not have been seen.</summary>
    public static double Of(GrowthRateRow row, ModelParameters model, double brothRate)
    {
        double rate = brothRate * row.ShareOfOptimum(model);
        return row.RatePerHour > 0
            ? Math.Log(Math.Max(rate, 1e-4) / row.RatePerHour) / GrowthLnError
            : rate / UnseenRatePerHour;
    }

    /// <summary>ln of the day the model reaches the row's value over the row's day; null where it does not.</summary>
    public static double? LnDayRatio(PublishedCourse row, CourseAnswer answer)
    {
        if (answer.Day is not { } day)
            return null;
        double published = row.Quantity == "ripe_day" ? Math.Sqrt(row.Low * row.High) : row.Day;
        return Math.Log(Math.Max(day, 0.01) / published);
    }

    private static double ValueError(PublishedCourse row) => row.Quantity switch
    {
        "ph" => (0.3 * (row.High - row.Low)) + 0.04,
        "lab_log10_cfu_per_ml" => 0.6,
        _ => (0.3 * (row.High - row.Low)) + (0.03 * row.Middle),
    };

    /// <summary>Bounded, so that a row near its plateau, where the day means little, cannot rule the fit.</summary>
    private static double DayResidual(PublishedCourse row, CourseAnswer answer)
    {
        // Not reached: as if at the end of the span, and the more the farther the value still is.
        double ln = LnDayRatio(row, answer) ?? (Math.Log(4) + Math.Abs(answer.Value - (row.Quantity == "ripe_day" ? 0.65 : row.Middle)));
        return MostDayResidual * Math.Tanh(ln / DayError / MostDayResidual);
    }
}
