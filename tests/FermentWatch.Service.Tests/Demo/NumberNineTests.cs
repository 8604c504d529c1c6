using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Service.Demo.Household;
using NodaTime;

namespace FermentWatch.Service.Tests.Demo;

public class NumberNineTests
{
    [Fact]
    public void Lots_ByTheKitchensRules_AreAllPutUp()
    {
        var household = new Household { Id = Guid.NewGuid(), Name = NumberNine.Name, TimeZoneId = "UTC" };
        Place[] places = [.. NumberNine.Rooms.Select(room => new Place { Id = Guid.NewGuid(), Name = room.Name, Typical = room.Typical })];
        var orders = NumberNine.Lots.Select(lot => PutUp.Read(lot.Form, household, places, Instant.FromUtc(2026, 10, 4, 12, 0))).ToList();
        Assert.All(orders, order => Assert.Empty(order.Refusals));
        Assert.InRange(orders.Sum(order => order.Jars.Count), 15, 40);
    }

    [Fact]
    public void Lots_OfSeveralAges_HoldEveryVegetableOfTheHousehold()
    {
        Assert.Equal(["cabbage", "carrot", "cucumber", "daikon", "napa", "red cabbage"], NumberNine.Lots.Select(lot => lot.Form.What!).Distinct()
            .Order());
        Assert.Equal(NumberNine.Lots.Count, NumberNine.Lots.Select(lot => lot.DaysAgo).Distinct().Count());
        Assert.All(NumberNine.Lots, lot => Assert.All(lot.Acts, act => Assert.InRange(act.Day, 0, lot.DaysAgo)));
        Assert.All(NumberNine.Lots, lot => Assert.Equal(lot.Acts.Select(act => act.Day).Order(), lot.Acts.Select(act => act.Day)));
    }
}
