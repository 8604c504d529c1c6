using System.Text.Json;
using FermentWatch.Intake.Decoding;
using FermentWatch.Intake.Decoding.SenMl;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Intake.Sources;

/// <summary>Reads the time of a document by its rule.</summary>
internal static class SourceTimes
{
    private static readonly OffsetDateTimePattern[] _iso =
    [
        OffsetDateTimePattern.Rfc3339,
        OffsetDateTimePattern.ExtendedIso,
        OffsetDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm:ss;FFFFFFFFFo<+HHmm>"),
        OffsetDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd' 'HH:mm:ss;FFFFFFFFFo<Z+HH:mm>"),
        OffsetDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mmo<Z+HH:mm>"),
    ];

    /// <summary>The time; null where the document has none that can be read.</summary>
    public static (Instant At, TimeSource Source)? Read(SourceReader source, JsonElement root, Instant receivedAt)
    {
        if (source.TimePlace is not { } place)
            return (receivedAt, TimeSource.Arrival);
        Instant? at = place.Evaluate(root) is { } field ? Read(source.Rule.Time, field) : null;
        return at is { } read ? (read, TimeSource.Payload) : null;
    }

    /// <summary>What belongs where the time is, in words.</summary>
    public static string InWords(SourceTime time) => time switch
    {
        SourceTime.UnixSeconds => "a number of seconds since 1970",
        SourceTime.UnixMilliseconds => "a number of milliseconds since 1970",
        _ => "a time like 2026-10-04T08:00:00Z or 2026-10-04T10:00:00+02:00, with its offset,",
    };

    private static Instant? Read(SourceTime kind, JsonElement field)
    {
        if (kind == SourceTime.Iso8601)
            return JsonText.Of(field) is { } text ? ReadIso(text) : null;
        double? number = field.ValueKind switch
        {
            JsonValueKind.Number => field.TryGetDouble(out double value) ? value : null,
            JsonValueKind.String => JsonText.Of(field) is { } digits
                && StrictNumber.Read(System.Text.Encoding.UTF8.GetBytes(digits), out double value) == NumberShape.Finite ? value : null,
            _ => null,
        };
        // A clock that was never set counts its own uptime: no time, and for SenML's rule a relative one.
        double? seconds = kind == SourceTime.UnixMilliseconds ? number / 1000 : number;
        return seconds is { } absolute && !SenMlTime.IsRelative(absolute) ? SenMlTime.Resolve(absolute, default) : null;
    }

    private static Instant? ReadIso(string text)
    {
        foreach (OffsetDateTimePattern pattern in _iso)
            if (pattern.Parse(text) is { Success: true } parsed)
                return Truncated(parsed.Value.ToInstant());
        return null;
    }

    private static Instant? Truncated(Instant at)
    {
        long milliseconds = at.ToUnixTimeMilliseconds();
        return milliseconds >= 0 ? Instant.FromUnixTimeMilliseconds(milliseconds) : null;
    }
}
