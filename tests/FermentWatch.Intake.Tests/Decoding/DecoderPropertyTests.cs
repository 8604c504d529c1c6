using System.Diagnostics;
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
using Xunit.Abstractions;

namespace FermentWatch.Intake.Tests.Decoding;

public sealed class DecoderPropertyTests(ITestOutputHelper output)
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
    public void Decode_AnyPayload_GivesValuesOrFaultsAndNeverThrows()
    {
        long start = TimeProvider.System.GetTimestamp(), decoded = 0, values = 0;
        AnyPayload.Bytes.Sample(
            payload =>
            {
                int sound = AssertSound(BareNumberDecoder.Decode(payload, MeasureUnit.Find("degF")!, _now))
                    + AssertSound(SenMlDecoder.Decode(payload, _now));
                foreach (SourceReader source in _sources)
                    sound += AssertSound(SourceDecoder.Decode(source, payload, _now));
                foreach (Likeness likeness in LikenessFinder.Find("a/temperature", payload))
                    Assert.InRange(likeness.Unit.ToStored(likeness.Value), -30, 60);
                Interlocked.Increment(ref decoded);
                Interlocked.Add(ref values, sound);
            },
            iter: _iterations);

        using Process self = Process.GetCurrentProcess();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{decoded} payloads through five decoders and the offers, {values} values in them, in "
            + $"{TimeProvider.System.GetElapsedTime(start).TotalSeconds:F0} s ({self.TotalProcessorTime.TotalSeconds:F0} s of processor time so "
            + $"far); "
            + $"resident {self.WorkingSet64 / 1e6:F0} MB, at most {self.PeakWorkingSet64 / 1e6:F0} MB, managed "
            + $"{GC.GetTotalMemory(forceFullCollection: true) / 1e6:F1} MB"));
        Assert.Equal(_iterations, decoded);
    }

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

    /// <summary>Gives how many values were in it.</summary>
    private static int AssertSound(Decoded decoded)
    {
        Assert.True(decoded.Values.Count + decoded.Faults.Count > 0);
        Assert.All(decoded.Values, value => Assert.True(double.IsFinite(value.Value)));
        Assert.All(decoded.Faults, fault =>
        {
            Assert.True(fault.Example.Length <= PayloadExcerpt.LongestCharacters);
            Assert.EndsWith(".", fault.Explanation);
        });
        return decoded.Values.Count;
    }
}
