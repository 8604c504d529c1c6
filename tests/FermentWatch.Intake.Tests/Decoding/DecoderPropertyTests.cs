using System.Globalization;
using System.Text;
using CsCheck;
using FermentWatch.Intake.Decoding;
using FermentWatch.Intake.Decoding.SenMl;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Intake.Tests.Decoding;

public sealed class DecoderPropertyTests
{
    private static readonly Instant _now = Instant.FromUtc(2026, 10, 4, 8, 0);
    private static readonly long _iterations = Environment.GetEnvironmentVariable("FERMENTWATCH_TESTS_LONG") == "1" ? 10_000_000 : 50_000;

    [Fact]
    public void Decode_AnyPayload_GivesValuesOrFaultsAndNeverThrows() =>
        AnyPayload.Bytes.Sample(
            payload =>
            {
                AssertSound(BareNumberDecoder.Decode(payload, MeasureUnit.Fahrenheit, _now));
                AssertSound(SenMlDecoder.Decode(payload, _now));
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

        Assert.InRange(TimeProvider.System.GetElapsedTime(start), TimeSpan.Zero, TimeSpan.FromSeconds(2));
    }

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
