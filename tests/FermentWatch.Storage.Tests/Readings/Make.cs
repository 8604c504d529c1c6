using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Storage.Tests.Readings;

/// <summary>Readings for tests, around one fixed instant.</summary>
internal static class Make
{
    internal static readonly Instant Noon = Instant.FromUtc(2025, 10, 4, 12, 0);

    internal static Reading Timed(double seconds, double value, int sensor = 1, Quantity quantity = Quantity.Temperature) =>
        new(sensor, quantity, value, Noon + Duration.FromSeconds(seconds), Noon + Duration.FromHours(1), TimeSource.Payload);

    internal static Reading Bare(double seconds, double value, int sensor = 1) =>
        Timed(seconds, value, sensor) with { TimeSource = TimeSource.Arrival, ReceivedAt = Noon + Duration.FromSeconds(seconds) };

    internal static VerdictChange Judged(this Reading reading, Verdict verdict) =>
        new(reading.SensorKey, reading.Quantity, reading.MeasuredAt, verdict);
}
