using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Forecasts;

public class JarSpansTests
{
    private static readonly Instant Noon = Instant.FromUtc(2026, 10, 4, 12, 0);

    [Fact]
    public void Joined_SpansThatTouchOrOverlap_AreOneOfEachSensor() => Assert.Equal(
        [Span(1, 0, 9), Span(1, 12, 13), Span(2, 3, 4)],
        JarSpans.Joined([Span(2, 3, 4), Span(1, 12, 13), Span(1, 4, 9), Span(1, 0, 4), Span(1, 2, 3)]));

    [Fact]
    public void Joined_Nothing_IsNothing() => Assert.Empty(JarSpans.Joined([]));

    private static SensorSpan Span(int sensor, int fromHour, int untilHour) =>
        new(sensor, Noon + Duration.FromHours(fromHour), Noon + Duration.FromHours(untilHour));
}
