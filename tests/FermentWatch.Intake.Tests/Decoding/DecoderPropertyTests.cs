using System.Globalization;
using System.Text;
using CsCheck;
using FermentWatch.Intake.Decoding;
using FermentWatch.Intake.Decoding.SenMl;
using FermentWatch.Intake.Offers;
using FermentWatch.Intake.Sources;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Intake.Tests.Decoding;

public sealed class DecoderPropertyTests
{
    private static readonly Instant _now = Instant.FromUtc(2026, 10, 4, 8, 0);
    private static readonly long _iterations = Environment.GetEnvironmentVariable("FERMENTWATCH_TESTS_LONG") == "1" ? 10_000_000 : 50_000;

    private static readonly SourceReader[] _sources =
    [
        Source("/v", null, SourceTime.Arrival, null),
        Source("/0/v", "/0/u", SourceTime.UnixSeconds, "/0/t"),
        Source("/n", "/u", SourceTime.Iso8601, "/bn"),
    ];

    [Fact]
    public void Decode_AnyPayload_GivesValuesOrFaultsAndNeverThrows() =>
        AnyPayload.Bytes.Sample(
            payload =>
            {
                AssertSound(BareNumberDecoder.Decode(payload, MeasureUnit.Fahrenheit, _now));
                AssertSound(SenMlDecoder.Decode(payload, _now));
                foreach (SourceReader source in _sources)
                    AssertSound(SourceDecoder.Decode(source, payload, _now));
                Assert.All(LikenessFinder.Find("a/temperature", payload), likeness =>
                    Assert.InRange(likeness.Unit.ToStored(likeness.Value), -30, 60));
            },
            iter: _iterations);

    [Fact]
    public void Decode_AnyPackOfTemperatures_KeepsEveryValueAndItsTime() =>
        Gen.Select(Gen.Double[-40, 120], Gen.Int[0, 1_000_000]).Array[1, 50].Sample(rows =>
        {
            string pack = "[" + string.Join(",", rows.Select(row => string.Create(CultureInfo.InvariantCulture,
                $"{{\"n\":\"x\",\"u\":\"Cel\",\"t\":{1_790_000_000 + row.Item2},\"v\":{row.Item1:R}}}"))) + "]";

            Decoded decoded = SenMlDecoder.Decode(Encoding.UTF8.GetBytes(pack), _now);

            Assert.Empty(decoded.Faults);
            Assert.Equal(
                rows.Select(row => new DecodedValue(
                    Quantity.Temperature, row.Item1, Instant.FromUnixTimeSeconds(1_790_000_000 + row.Item2), TimeSource.Payload)),
                decoded.Values);
        });

    [Theory]
    [InlineData(' ')]
    [InlineData('n')]
    [InlineData('-')]
    [InlineData('[')]
    [InlineData('"')]
    [InlineData('\\')]
    public void Decode_LargestPayloadOfOneCharacter_TakesNoLongTime(char character)
    {
        byte[] payload = new byte[1_048_576];
        Array.Fill(payload, (byte)character);
        long start = TimeProvider.System.GetTimestamp();

        AssertSound(SenMlDecoder.Decode(payload, _now));
        AssertSound(SourceDecoder.Decode(_sources[0], payload, _now));
        Assert.Empty(LikenessFinder.Find("a/b", payload));

        Assert.InRange(TimeProvider.System.GetElapsedTime(start), TimeSpan.Zero, TimeSpan.FromSeconds(10));
    }

    private static SourceReader Source(string value, string? unit, SourceTime time, string? timePlace) => SourceReader.Of(new SourceRule
    {
        Id = Guid.Empty, TopicFilter = "a/b", SensorSlug = "cellar", Payload = SourcePayload.Json, Quantity = Quantity.Temperature,
        ValuePointer = value, Unit = "Cel", UnitPointer = unit, Time = time, TimePointer = timePlace, Offset = 0.5,
    });

    private static void AssertSound(Decoded decoded)
    {
        Assert.True(decoded.Values.Count + decoded.Faults.Count > 0);
        Assert.All(decoded.Values, value => Assert.True(double.IsFinite(value.Value)));
        Assert.All(decoded.Faults, fault =>
        {
            Assert.True(fault.Example.Length <= PayloadExcerpt.LongestCharacters);
            Assert.EndsWith(".", fault.Explanation);
        });
    }
}
