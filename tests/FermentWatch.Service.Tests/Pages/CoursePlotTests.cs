using FermentWatch.Acts.Jars;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Web.Pages.Charts;
using NodaTime;

namespace FermentWatch.Service.Tests.Pages;

public class CoursePlotTests
{
    private static readonly Instant Origin = Instant.FromUtc(2026, 10, 5, 16, 0);

    private static readonly CoursePoint[] Course =
    [
        .. Enumerable.Range(0, 41).Select(half => half / 2.0).Select(day => new CoursePoint(
            day, 18, Around(6 - (day / 10), 0.2), Around(0.1 + (day / 20), 0.1), 20, Around(6 - (day / 10), 0.2))),
    ];

    [Fact]
    public void Measured_SensorSilentForHours_LeavesTheGapOpen()
    {
        TimedTemperature[] measured =
            [.. Enumerable.Range(0, 48).Where(hour => hour is < 10 or > 20).Select(hour => new TimedTemperature(hour / 24.0, 18))];
        Assert.Equal([10, 27], Drawn(measured).Select(piece => piece.Split(' ').Length));
    }

    [Fact]
    public void AcidLine_OnTheAxis_LiesBetween4And5()
    {
        CoursePlot plot = Plot([]);
        double four = plot.Ph!.Marks.Single(mark => mark.Label == "4").At, five = plot.Ph!.Marks.Single(mark => mark.Label == "5").At;
        Assert.Equal(four + ((five - four) * 0.6), plot.AcidLineY(plot.Ph!), 9);
    }

    [Fact]
    public void MeasuredPh_ReadingOnDay10_LiesHalfway()
    {
        CoursePlot plot = Plot([]);
        MeasuredPoint point = Assert.Single(plot.MeasuredPh(plot.Ph!));
        Assert.Equal((plot.Left + plot.Right) / 2, point.X, 9);
        Assert.Equal(plot.NowX, point.X);
        Assert.Equal(PhMethod.Strip, point.Method);
    }

    [Fact]
    public void Dates_NarrowPicture_AreFewEnoughToBeRead() =>
        Assert.InRange(Plot([]).Dates.Count(), 3, 6);

    [Fact]
    public void At_BetweenPoints_IsStraight()
    {
        Assert.Equal(5.975, CourseReading.At(Course, 0.25).Ph.P50, 9);
        Assert.Equal(Course[^1], CourseReading.At(Course, 99));
        Assert.Equal(Course[0], CourseReading.At(Course, -1));
    }

    [Fact]
    public void Progress_HalfwayToTheTarget_IsHalf()
    {
        JarProgress progress = JarProgress.At(Course, 10, 1.1);
        Assert.Equal(0.5, progress.P50, 9);
        Assert.Equal(0.4, progress.P10, 9);
        Assert.Equal(1, JarProgress.At(Course, 20, 0.6).P10);
    }

    private static IEnumerable<string> Drawn(TimedTemperature[] measured)
    {
        CoursePlot plot = Plot(measured);
        return plot.MeasuredTemperature(plot.Temperature!);
    }

    private static CoursePlot Plot(IReadOnlyList<TimedTemperature> measured) => new(new CourseData
    {
        Course = Course, Measured = measured, TargetPercentLactic = 1.2, Unit = TemperatureUnit.Celsius, LastDay = 20,
        Calendar = new ForecastCalendar(Origin, 20, Origin + Duration.FromDays(10), DateTimeZone.Utc),
        Readings =
        [
            new PhMeasurement
            {
                Id = Guid.Empty, JarId = Guid.Empty, At = Origin + Duration.FromDays(10), EnteredAt = Origin, By = "Ada", Ph = 4,
                    Method = PhMethod.Strip,
            },
        ],
    }, 370);

    private static Quantiles Around(double middle, double half) => new(middle - half, middle, middle + half);
}
