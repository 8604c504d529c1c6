using FermentWatch.Kinetics.Temperature;
using NodaTime;

namespace FermentWatch.Kitchen.Readings;

/// <summary>The grid of quarter hours since the Unix epoch on which the model eats temperatures.</summary>
public static class QuarterHour
{
    public static readonly Duration Length = Duration.FromMinutes(15);

    private static readonly long Ticks = (long)Length.TotalTicks;

    /// <summary>Start of the quarter hour that holds an instant.</summary>
    public static Instant Floor(Instant instant)
    {
        long ticks = instant.ToUnixTimeTicks();
        return Instant.FromUnixTimeTicks(ticks - ((ticks % Ticks + Ticks) % Ticks));
    }

    /// <summary>Start of the UTC day that holds an instant.</summary>
    public static Instant FloorDay(Instant instant) => instant.InUtc().Date.AtMidnight().InUtc().ToInstant();

    /// <summary>Whole quarter hours from one start to another.</summary>
    public static int Between(Instant start, Instant end) => checked((int)((end - start).TotalTicks / Ticks));

    /// <summary>Days from one instant to another, as the model counts them.</summary>
    public static double Days(Instant start, Instant end) => Between(start, end) * TemperatureCourse.StepDays;
}
