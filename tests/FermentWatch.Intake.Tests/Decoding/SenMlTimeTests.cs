using FermentWatch.Intake.Decoding.SenMl;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Intake.Tests.Decoding;

public sealed class SenMlTimeTests
{
    private static readonly Instant _now = Instant.FromUtc(2026, 10, 4, 8, 0);

    [Theory]
    [InlineData(0, "2026-10-04T08:00:00Z")]
    [InlineData(-0.25, "2026-10-04T07:59:59.75Z")]
    [InlineData(60, "2026-10-04T08:01:00Z")]
    [InlineData(268_435_455, "2035-04-07T05:24:15Z")]
    [InlineData(268_435_456, "1978-07-04T21:24:16Z")]
    [InlineData(1_790_841_600.1234, "2026-10-01T08:00:00.123Z")]
    public void Resolve_BelowTwoToThe28_IsRelativeElseUnixTime(double seconds, string expected) =>
        Assert.Equal(expected, InstantPattern.ExtendedIso.Format(SenMlTime.Resolve(seconds, _now)!.Value));

    [Theory]
    [InlineData(-1e12)]
    [InlineData(1e15)]
    [InlineData(double.MaxValue)]
    [InlineData(double.MinValue)]
    public void Resolve_OutsideTheCalendar_IsNull(double seconds) => Assert.Null(SenMlTime.Resolve(seconds, _now));
}
