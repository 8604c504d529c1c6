using CsCheck;
using FermentWatch.Kitchen.Members;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Members;

public class QuietHoursTests
{
    private static readonly DateTimeZone Vienna = DateTimeZoneProviders.Tzdb["Europe/Vienna"];

    [Theory]
    [InlineData(21, 59, false)]
    [InlineData(22, 0, true)]
    [InlineData(3, 0, true)]
    [InlineData(6, 59, true)]
    [InlineData(7, 0, false)]
    public void Hold_OverMidnight_HoldsTheNight(int hour, int minute, bool quiet) =>
        Assert.Equal(quiet, new QuietHours(new LocalTime(22, 0), new LocalTime(7, 0)).Hold(new LocalTime(hour, minute)));

    [Fact]
    public void Next_EndInTheSpringGap_ComesLaterByTheGap()
    {
        // 28 March 2027, 02:00 to 03:00 is skipped in Vienna.
        Instant night = new LocalDateTime(2027, 3, 28, 1, 0).InZoneLeniently(Vienna).ToInstant();
        Assert.Equal(new LocalTime(3, 30), new QuietHours(new LocalTime(22, 0), new LocalTime(2, 30)).Next(night, Vienna).InZone(Vienna).TimeOfDay);
    }

    [Fact]
    public void Next_AnyHoursZoneAndInstant_IsNotQuietAndNotEarlier() =>
        Gen.Select(Gen.Int[0, 1439], Gen.Int[0, 1439], Gen.Long[1104537600, 1798761600], Gen.Int[0, DateTimeZoneProviders.Tzdb.Ids.Count - 1])
            .Sample((from, until, second, which) =>
        {
            if (from == until)
                return true;
            DateTimeZone zone = DateTimeZoneProviders.Tzdb[DateTimeZoneProviders.Tzdb.Ids[which]];
            var quiet = new QuietHours(LocalTime.Midnight.PlusMinutes(from), LocalTime.Midnight.PlusMinutes(until));
            Instant at = Instant.FromUnixTimeSeconds(second), next = quiet.Next(at, zone);
            return next >= at && next - at < Duration.FromHours(50) && (quiet.Hold(at.InZone(zone).TimeOfDay) ? next > at : next == at);
        });
}
