using FermentWatch.Intake.Sources;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Intake.Tests.Sources;

public sealed class SourceReaderTests
{
    [Fact]
    public void Errors_EverythingWrong_NamesAllAtOnce()
    {
        var rule = new SourceRule
        {
            Id = Guid.Empty,
            TopicFilter = "gateway/{device}/{device}",
            SensorSlug = "Cellar!",
            Payload = SourcePayload.Number,
            ValuePointer = "temperature",
            Unit = "C",
            Time = SourceTime.UnixSeconds,
            RecordName = "x",
            Offset = double.NaN,
            PlausibleLow = 30,
            PlausibleHigh = 20,
            LongestSilence = Duration.Zero,
        };

        Assert.Equal(
            [
                "In the topic filter 'gateway/{device}/{device}' {device} must stand once, alone between two slashes.",
                "The sensor is 'Cellar!'; lower case letters, digits and hyphens belong here.",
                "A pointer to a value belongs to a JSON document only.",
                "'temperature' is no JSON Pointer; one begins with a slash, like /climate/temperature.",
                $"The quantity is missing; {MeasuredQuantity.NamesInWords} belongs here.",
                $"The unit is 'C'; {string.Join(", ", MeasureUnit.All)} are known.",
                "A time needs a JSON document and a pointer to it, and a pointer to a time needs its kind.",
                "The name of records belongs to a SenML pack only.",
                "The offset is NaN; a number belongs here.",
                "The smallest plausible value is not below the largest.",
                "The longest silence must be above zero.",
            ],
            SourceReader.Errors(rule));
    }

    [Theory]
    [InlineData("gateway/{device}", "cellar", "The topic names the sensor at {device}; no other sensor can be given.")]
    [InlineData("gateway/cellar", null, "Give the sensor, or put {device} where the topic names it.")]
    [InlineData("fermentwatch/sensor/+/temperature", "cellar", "Topics under fermentwatch/sensor/ need no rule.")]
    [InlineData("gateway/x{device}", "cellar", "In the topic filter 'gateway/x{device}' {device} must stand once, alone between two slashes.")]
    [InlineData("gateway/#/x", "cellar", "In the topic filter 'gateway/#/x' the '#' must stand alone at the end.")]
    public void Errors_TopicAndSensor_MustAgree(string filter, string? sensor, string expected) =>
        Assert.Equal([expected], SourceReader.Errors(new SourceRule
        {
            Id = Guid.Empty, TopicFilter = filter, SensorSlug = sensor, Payload = SourcePayload.Number,
            Quantity = Quantity.Temperature, Unit = "Cel",
        }));

    [Fact]
    public void Of_WrongRule_Throws() => Assert.Throws<ArgumentException>(() => SourceReader.Of(new SourceRule
    {
        Id = Guid.Empty, TopicFilter = "a", SensorSlug = "cellar", Payload = SourcePayload.Number, Quantity = Quantity.Ph, Unit = "Cel",
    }));

    [Theory]
    [InlineData("gateway/{device}", "gateway/Kitchen Shelf", "kitchen-shelf")]
    [InlineData("ble/+/{device}/state", "ble/hall/A4:C1:38/state", "a4-c1-38")]
    [InlineData("gateway/{device}/#", "gateway/x/y/z", "x")]
    [InlineData("gateway/{device}", "gateway/ÄÖ", null)]
    [InlineData("gateway/+", "gateway/x", null)]
    public void DeviceSlug_Topic_NamesTheDevice(string filter, string topic, string? expected) =>
        Assert.Equal(expected, SourceFilter.Parse(filter, out _)!.DeviceSlug(topic));
}
