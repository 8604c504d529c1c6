using System.Globalization;
using System.Text;
using CsvHelper;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Service.CommandLine.Outlook;

/// <summary>
/// Reads a file of temperatures: a header line, then a day since packing or an ISO 8601 time, and a temperature in each.
/// A bare temperature is Celsius unless the header says <c>temperature_f</c>.
/// </summary>
internal static class TemperatureFile
{
    private const int MostTroublesTold = 5;
    private const string Layout =
        "a header 'day,temperature_c' or 'time,temperature_c' and lines like '0.5,18.2' or '2026-10-04T18:30:00Z,18.2' would be right";

    private static readonly CsvReaderOptions Csv = new() { CommentPrefix = '#', TrimWhitespace = true, TrackLineNumbers = true };

    /// <summary>The temperatures of a file by day since packing; null after a refusal.</summary>
    public static IReadOnlyList<TimedTemperature>? Read(string path, string? packed, Instant now, FieldReader reader)
    {
        Instant? packedAt = packed is null ? null : ReadPacked(packed, now, reader);
        try
        {
            using CsvReader csv = CsvReader.FromFile(path, Csv);
            return ReadLines(csv, path, packedAt, reader);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException or CsvFormatException)
        {
            reader.Refuse("temperatures", path, $"a file that can be read would be right ({trouble.Message})");
        }
        return null;
    }

    private static List<TimedTemperature>? ReadLines(CsvReader csv, string path, Instant? packedAt, FieldReader reader)
    {
        csv.ReadHeader();
        if (HeaderOf(csv.Headers) is not { } header)
        {
            reader.Refuse("temperatures", path, Layout);
            return null;
        }
        var read = new List<(double Day, double Celsius)>();
        var wrong = new List<string>();
        while (csv.Read())
        {
            if (ReadWhen(csv.GetString(0), header.IsTime) is { } when && Amount.Celsius.TryRead(csv.GetString(1), header.Unit, out double celsius))
                read.Add((when, celsius));
            else
                wrong.Add(string.Create(CultureInfo.InvariantCulture, $"line {csv.LineNumber} '{Encoding.UTF8.GetString(csv.RawRecord)}'"));
        }
        foreach (string trouble in wrong.Take(MostTroublesTold))
            reader.Refuse("temperatures", $"{path} {trouble}", Layout);
        if (wrong.Count > MostTroublesTold)
            reader.Refuse("temperatures", $"{wrong.Count - MostTroublesTold} more lines of {path}", Layout);
        if (read.Count == 0 && wrong.Count == 0)
            reader.Refuse("temperatures", $"{path} without a line of figures", Layout);
        if (packedAt is not null && !header.IsTime)
            reader.Refuse("packed", $"a time beside the days of {path}", "days in a file count from packing already: leave it out");
        return wrong.Count > 0 ? null : FromPacking(read, header.IsTime, packedAt);
    }

    private static (bool IsTime, string Unit)? HeaderOf(IReadOnlyList<string> names)
    {
        string[] lower = [.. names.Select(name => name.Trim().ToUpperInvariant())];
        if (lower.Length < 2 || lower[0] is not ("DAY" or "TIME"))
            return null;
        return lower[1] switch
        {
            "TEMPERATURE" or "TEMPERATURE_C" => (lower[0] == "TIME", "C"),
            "TEMPERATURE_F" => (lower[0] == "TIME", "F"),
            _ => null,
        };
    }

    /// <summary>Days, or days since the Unix epoch; a time without an offset is taken as UTC, since only differences count.</summary>
    private static double? ReadWhen(string? typed, bool isTime)
    {
        if (!isTime)
            return Amount.Number.TryRead(typed, null, out double day) ? day : null;
        return ReadTime(typed) is { } time ? (time - NodaConstants.UnixEpoch).TotalDays : null;
    }

    private static Instant? ReadTime(string? typed)
    {
        string text = (typed ?? "").Replace(' ', 'T');
        if (OffsetDateTimePattern.ExtendedIso.Parse(text) is { Success: true, Value: var withOffset })
            return withOffset.ToInstant();
        if (LocalDateTimePattern.ExtendedIso.Parse(text) is { Success: true, Value: var local })
            return local.InUtc().ToInstant();
        if (LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm").Parse(text) is { Success: true, Value: var minutes })
            return minutes.InUtc().ToInstant();
        return LocalDatePattern.Iso.Parse(text) is { Success: true, Value: var date } ? date.AtMidnight().InUtc().ToInstant() : null;
    }

    private static Instant? ReadPacked(string typed, Instant now, FieldReader reader)
    {
        if (ReadTime(typed.Trim()) is { } at && at <= now)
            return at;
        reader.Refuse("packed", typed, $"a day or time not later than now, {InstantPattern.General.Format(now)}, would be right");
        return null;
    }

    private static List<TimedTemperature> FromPacking(List<(double Day, double Celsius)> read, bool isTime, Instant? packedAt)
    {
        double origin = packedAt is { } at ? (at - NodaConstants.UnixEpoch).TotalDays
            : isTime && read.Count > 0 ? read.Min(reading => reading.Day) : 0;
        return [.. read.Select(reading => new TimedTemperature(reading.Day - origin, reading.Celsius))];
    }
}
