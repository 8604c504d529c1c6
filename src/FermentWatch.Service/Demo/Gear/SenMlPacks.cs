using System.Buffers;
using System.Text.Json;
using FermentWatch.Service.Demo.Household;
using NodaTime;

namespace FermentWatch.Service.Demo.Gear;

/// <summary>Writes what a sensor kept as SenML packs (RFC 8428) with times of their own.</summary>
internal static class SenMlPacks
{
    private const int MostRecords = 1500;

    /// <summary>Every quarter of an hour from an instant until another, several packs if it is long.</summary>
    public static IEnumerable<byte[]> Of(MadeSensor sensor, Instant from, Instant until)
    {
        foreach (Instant[] times in Times(from, until).Chunk(MostRecords))
        {
            yield return Pack($"{sensor.Invented.Slug}:temperature", "Cel", times, at => Oddity(sensor, at, until) ?? sensor.CelsiusAt(at));
            if (sensor.PhAt is { } phAt)
                yield return Pack($"{sensor.Invented.Slug}:ph", "pH", times, at => Math.Round(phAt(at), 2));
        }
    }

    private static IEnumerable<Instant> Times(Instant from, Instant until)
    {
        for (Instant at = from; at < until; at += Duration.FromMinutes(15))
            yield return at;
    }

    /// <summary>What small probes send now and then instead of a temperature: 85 after power-up, -127 when the wire is off.</summary>
    private static double? Oddity(MadeSensor sensor, Instant at, Instant until)
    {
        if (sensor.Invented.InJar is not null)
            return null;
        double daysAgo = Math.Round((until - at).TotalDays * 96) / 96;
        return daysAgo switch { 5.5 => 85.0, 21.25 => -127.0, _ => null };
    }

    private static byte[] Pack(string name, string unit, Instant[] times, Func<Instant, double> valueAt)
    {
        var bytes = new ArrayBufferWriter<byte>();
        using var json = new Utf8JsonWriter(bytes);
        json.WriteStartArray();
        foreach (Instant at in times)
        {
            json.WriteStartObject();
            if (at == times[0])
            {
                json.WriteString("bn", name);
                json.WriteString("bu", unit);
                json.WriteNumber("bt", times[0].ToUnixTimeSeconds());
            }
            json.WriteNumber("t", (long)(at - times[0]).TotalSeconds);
            json.WriteNumber("v", valueAt(at));
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.Flush();
        return bytes.WrittenSpan.ToArray();
    }
}
