using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Service.Demo.Household;

/// <summary>
/// The pH an invented jar probably had, every two hours, from the same model that forecasts: invented measurements are taken
/// from it, so that they stay believable when the model changes.
/// </summary>
internal sealed class ExpectedCourse
{
    private const int Members = 16;
    private const double StepDays = 1.0 / 12;

    private readonly IReadOnlyList<CoursePoint> _course;
    private readonly Instant _packedAt;

    private ExpectedCourse(Instant packedAt, IReadOnlyList<CoursePoint> course)
    {
        _packedAt = packedAt;
        _course = course;
    }

    /// <summary>The course of a jar until a day after <paramref name="until"/>.</summary>
    /// <param name="jar">The jar.</param>
    /// <param name="celsiusAt">Temperature around the jar at an instant.</param>
    /// <param name="until">The present.</param>
    public static ExpectedCourse Of(Jar jar, Func<Instant, double> celsiusAt, Instant until)
    {
        double days = (until - jar.PackedAt).TotalDays + 1;
        var steps = Enumerable.Range(0, (int)Math.Ceiling(days * TemperatureCourse.StepsPerDay))
            .Select(step => TemperatureStep.Room(celsiusAt(jar.PackedAt + (QuarterHour.Length * step)))).ToList();
        Forecast forecast = Forecaster.Run(new ForecastRequest
        {
            Recipe = jar.Recipe(), Temperatures = TemperatureCourse.FromSteps(steps, TypicalRoom.Usual), Members = Members,
            Seed = (ulong)jar.Number, Days = days, EveryDays = StepDays,
        });
        return new ExpectedCourse(jar.PackedAt, forecast.Course);
    }

    /// <summary>The pH at an instant; before packing that of packing, after the end that of the end.</summary>
    public double PhAt(Instant at)
    {
        int index = (int)Math.Round((at - _packedAt).TotalDays / StepDays);
        return _course[Math.Clamp(index, 0, _course.Count - 1)].Ph.P50;
    }
}
