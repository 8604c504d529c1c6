using FermentWatch.Service.Demo.Household;
using NodaTime;

namespace FermentWatch.Service.Tests.Demo;

public class InventedRoomTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 10, 4, 12, 0);
    private static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["Europe/Vienna"];

    [Theory]
    [MemberData(nameof(Rooms))]
    public void CelsiusAt_FiveWeeks_StaysWhatARoomCanBeAndNeverJumps(string name)
    {
        double[] celsius = Quarters(Room(name));
        Assert.All(celsius, value => Assert.InRange(value, 0, 28));
        Assert.All(celsius.Zip(celsius.Skip(1)), pair => Assert.InRange(Math.Abs(pair.First - pair.Second), 0, 1.5));
        Assert.Equal(celsius, Quarters(Room(name)));
    }

    [Fact]
    public void CelsiusAt_KitchenInTheColdWeek_IsColderThanTheWeekBeforeAndAfter()
    {
        InventedRoom kitchen = Room("kitchen counter");
        double Mean(int fromDaysAgo) =>
            Enumerable.Range(0, 3 * 96)
            .Average(step => kitchen.CelsiusAt(Now - Duration.FromDays(fromDaysAgo) + Duration.FromMinutes(15 * step), Now, Zone));
        double cold = Mean(11);
        Assert.True(cold < Mean(20) - 1.5, $"{cold} against {Mean(20)} before");
        Assert.True(cold < Mean(3) - 1.5, $"{cold} against {Mean(3)} after");
    }

    [Fact]
    public void CelsiusAt_Kitchen_IsWarmerInTheEveningThanBeforeDawn()
    {
        InventedRoom kitchen = Room("kitchen counter");
        Instant dawn = new LocalDateTime(2026, 9, 20, 5, 0).InZoneStrictly(Zone).ToInstant();
        Assert.True(kitchen.CelsiusAt(dawn + Duration.FromHours(14), Now, Zone) > kitchen.CelsiusAt(dawn, Now, Zone) + 1.5);
    }

    public static TheoryData<string> Rooms() => [.. NumberNine.Rooms.Select(room => room.Name)];

    private static InventedRoom Room(string name) => NumberNine.Rooms.First(room => room.Name == name);

    private static double[] Quarters(InventedRoom room) =>
        [.. Enumerable.Range(0, 36 * 96).Select(step => room.CelsiusAt(Now - Duration.FromMinutes(15 * step), Now, Zone))];
}
