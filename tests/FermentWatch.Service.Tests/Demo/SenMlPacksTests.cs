using FermentWatch.Intake.Decoding;
using FermentWatch.Intake.Decoding.SenMl;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Service.Demo.Gear;
using FermentWatch.Service.Demo.Household;
using NodaTime;

namespace FermentWatch.Service.Tests.Demo;

public class SenMlPacksTests
{
    private static readonly Instant Now = Instant.FromUtc(2026, 10, 4, 12, 0);

    [Fact]
    public void Of_ThirtyDays_DecodesToEveryQuarterHourWithItsOwnTime()
    {
        var sensor = new MadeSensor(new InventedSensor("crock", "kitchen", "autumn crock", TimeSpan.FromSeconds(10)), "",
            Now - Duration.FromDays(30), _ => 18.5, _ => 3.914);
        List<DecodedValue> values = Decode(sensor);
        Assert.Equal(2 * 30 * 96, values.Count);
        Assert.All(values, value => Assert.Equal(TimeSource.Payload, value.TimeSource));
        Assert.Equal(Enumerable.Range(0, 30 * 96).Select(step => Now - Duration.FromDays(30) + Duration.FromMinutes(15 * step)),
            values.Where(value => value.Quantity == Quantity.Temperature).Select(value => value.MeasuredAt));
        Assert.Equal([18.5, 3.91], values.Select(value => value.Value).Distinct());
    }

    [Fact]
    public void Of_RoomSensor_HoldsWhatSmallProbesSendInsteadOfATemperature()
    {
        var sensor = new MadeSensor(new InventedSensor("shed", "garden shed", null, TimeSpan.FromSeconds(10)), "", Now - Duration.FromDays(30), _ =>
            18.5, null);
        Assert.Equal([-127.0, 18.5, 85.0], Decode(sensor).Select(value => value.Value).Distinct().Order());
    }

    private static List<DecodedValue> Decode(MadeSensor sensor)
    {
        var values = new List<DecodedValue>();
        foreach (byte[] pack in SenMlPacks.Of(sensor, sensor.Since, Now))
        {
            Assert.InRange(pack.Length, 1, 131_072);
            Decoded decoded = SenMlDecoder.Decode(pack, Now);
            Assert.Empty(decoded.Faults);
            values.AddRange(decoded.Values);
        }
        return values;
    }
}
