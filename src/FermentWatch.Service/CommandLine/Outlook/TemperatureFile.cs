using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Entry;
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
    private const string Layout = "a header 'day,temperature_c' or 'time,temperature_c' and lines like '0.5,18.2' or '2026-10-04T18:30:00Z,18.2' would be right";

    private static readonly CsvConfiguration Csv = new(CultureInfo.InvariantCulture)
    {
        DetectDelimiter = false, TrimOptions = TrimOptions.Trim, MissingFieldFound = null, BadDataFound = null, AllowComments = true,
    };

    /// <summary>The temperatures of a file by day since packing; null after a refusal.</summary>
    public static IReadOnlyList<TimedTemperature>? Read(string path, string? packed, Instant now, FieldReader reader)
    {
        try
        {
            using var text = new StreamReader(path);
            return ReadLines(text, path, packed, now, reader);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
        {
            reader.Refuse("temperatures", path, $"a file that can be read would be right ({trouble.Message})");
        }
        return null;
    }

    private static List<TimedTemperature>? ReadLines(TextReader text, string path, string? packed, Instant now, FieldReader reader)
    {
        using var csv = new CsvReader(text, Csv);
        if (!csv.Read() || !csv.ReadHeader() || HeaderOf(csv.HeaderRecord!) is not { } header)
        {
            reader.Refuse("temperatures", path, Layout);
            return null;
        }
        var read = new List<(double Day, double Celsius)>();
        var wrong = new List<string>();
        while (csv.Read())
        {
            if (ReadWhen(csv[0], header.IsTime) is { } when && Amount.Celsius.TryRead(csv[1], header.Unit, out double celsius))
                read.Add((when, celsius));
            else
                wrong.Add($"line {csv.Parser.Row.ToString(CultureInfo.InvariantCulture)} '{csv.Parser.RawRecord.TrimEnd()}'");
        }
        foreach (string trouble in wrong.Take(MostTroublesTold))
            reader.Refuse("temperatures", $"{path} {trouble}", Layout);
        if (wrong.Count > MostTroublesTold)
            reader.Refuse("temperatures", $"{wrong.Count - MostTroublesTold} more lines of {path}", Layout);
        if (read.Count == 0 && wrong.Count == 0)
            reader.Refuse("temperatures", $"{path} without a line of figures", Layout);
        return wrong.Count > 0 ? null : FromPacking(read, header.IsTime, packed, now, reader);
    }

    private static (bool IsTime, string Unit)? HeaderOf(string[] names)
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

    private static List<TimedTemperature> FromPacking(List<(double When, double Celsius)> read, bool isTime, string? packed, Instant now, FieldReader reader)
    {
        double origin = isTime && read.Count > 0 ? read.Min(reading => reading.When) : 0;
        if (packed is not null && !isTime)
            reader.Refuse("packed", packed, "days in the file count from packing already: leave it out");
        else if (packed is not null && ReadTime(packed.Trim()) is { } at && at <= now)
            origin = (at - NodaConstants.UnixEpoch).TotalDays;
        else if (packed is not null)
            reader.Refuse("packed", packed, $"a day or time not later than now, {InstantPattern.General.Format(now)}, would be right");
        return [.. read.Select(reading => new TimedTemperature(reading.When - origin, reading.Celsius))];
    }
}
