using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Reference.Tests.Published;

namespace FermentWatch.Reference.Tests.Courses;

/// <summary>80 % intervals hold, within reason, 80 % of the published points.</summary>
public class IntervalCoverageTests
{
    [Fact]
    public void Interval_PublishedPoints_HoldsAboutFourInFive()
    {
        PublishedCourse[] rows =
            [.. PublishedCourses.All.Where(row => row.Status is "read" or "secondary" && row.Quantity != "lab_log10_cfu_per_ml")];
        int held = rows.Count(row =>
        {
            Quantiles value = PublishedForecast.ValueOf(row);
            return row.Middle >= value.P10 && row.Middle <= value.P90;
        });
        double share = (double)held / rows.Length;
        Assert.True(share is >= 0.7 and < 1, $"{held} of {rows.Length}");
    }
}
