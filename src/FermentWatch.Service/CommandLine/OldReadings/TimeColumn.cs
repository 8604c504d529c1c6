using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Service.CommandLine.OldReadings;

/// <summary>How the times of a file are read: by which pattern, and on which clock where they do not say so themselves.</summary>
internal sealed class TimeColumn
{
    private const string Seconds = "unix", Milliseconds = "unix-ms";

    // The one that was right last time comes first.
    private static readonly string[] IsoLocal =
        ["uuuu-MM-dd'T'HH:mm:ss;FFFFFFFFF", "uuuu-MM-dd HH:mm:ss;FFFFFFFFF", "uuuu-MM-dd'T'HH:mm", "uuuu-MM-dd HH:mm"];

    private static readonly string[] IsoOffset = ["uuuu-MM-dd'T'HH:mm:ss;FFFFFFFFFo<Z+HH:mm>", "uuuu-MM-dd HH:mm:ss;FFFFFFFFFo<Z+HH:mm>"];

    private readonly DateTimeZone? _zone;
    private readonly LocalDateTimePattern[] _local;
    private readonly OffsetDateTimePattern[] _offset;
    private readonly long _unixMilliseconds;

    private TimeColumn(DateTimeZone? zone, LocalDateTimePattern[] local, OffsetDateTimePattern[] offset, long unixMilliseconds)
    {
        _zone = zone;
        _local = local;
        _offset = offset;
        _unixMilliseconds = unixMilliseconds;
    }

    /// <summary>What was asked for; refusals are gathered by the reader.</summary>
    /// <param name="format">A pattern of date and time, <c>unix</c> or <c>unix-ms</c>; null for ISO 8601.</param>
    /// <param name="zone">A zone of the tz database.</param>
    /// <param name="utcOffset">A fixed offset, such as +01:00.</param>
    /// <param name="reader">Gathers refusals.</param>
    public static TimeColumn Of(string? format, string? zone, string? utcOffset, FieldReader reader)
    {
        if (zone is not null && utcOffset is not null)
            reader.Refuse("zone", zone, "either --zone or --utc-offset would be right");
        DateTimeZone? clock = utcOffset is not null ? FixedZone(utcOffset, reader) : zone is null ? null : ZoneOf(zone, reader);
        if (format is Seconds or Milliseconds)
            return new TimeColumn(clock, [], [], format == Seconds ? 1000 : 1);
        if (format is null)
            return new TimeColumn(clock, [.. IsoLocal.Select(LocalDateTimePattern.CreateWithInvariantCulture)],
                [.. IsoOffset.Select(OffsetDateTimePattern.CreateWithInvariantCulture)], 0);
        if (Pattern(format) is { } pattern)
            return new TimeColumn(clock, [pattern], [], 0);
        reader.Refuse("time format", format, "unix, unix-ms or a pattern such as 'dd.MM.uuuu HH:mm' or 'uuuu-MM-dd HH:mm:ss' would be right");
        return new TimeColumn(clock, [], [], 1);
    }

    /// <summary>The instant that a text means; null with what is wrong.</summary>
    public Instant? Read(string text, out string wrong)
    {
        wrong = "";
        if (_unixMilliseconds > 0)
            return Unix(text, ref wrong);
        if (_offset.Length > 0 && BearsOffset(text))
        {
            for (int i = 0; i < _offset.Length; i++)
                if (_offset[i].Parse(text) is { Success: true, Value: var time })
                    return time.ToInstant();
        }
        else
            for (int i = 0; i < _local.Length; i++)
                if (_local[i].Parse(text) is { Success: true, Value: var local })
                {
                    (_local[0], _local[i]) = (_local[i], _local[0]);
                    return OnTheClock(local, ref wrong);
                }
        wrong = _offset.Length > 0 ? $"'{text}' is no ISO 8601 time; --time-format says another form"
            : $"'{text}' is no time of the form '{_local[0].PatternText}'";
        return null;
    }

    private static bool BearsOffset(string text) => text.Length > 6 && (text[^1] == 'Z' || (text[^6] is '+' or '-' && text[^3] == ':'));

    private Instant? OnTheClock(LocalDateTime local, ref string wrong)
    {
        if (_zone is null)
        {
            wrong = $"{local:uuuu-MM-dd HH:mm} does not say on which clock; --zone Europe/Vienna or --utc-offset +01:00 does";
            return null;
        }
        var mapped = _zone.MapLocal(local);
        if (mapped.Count == 1)
            return mapped.Single().ToInstant();
        wrong = mapped.Count == 0
            ? $"{local:uuuu-MM-dd HH:mm} did not exist in {_zone.Id}: clocks went forward over it"
            : $"{local:uuuu-MM-dd HH:mm} came twice in {_zone.Id}, when clocks went back: which one is not said";
        return null;
    }

    private Instant? Unix(string text, ref string wrong)
    {
        if (Amount.Number.TryRead(text, null, out double number) && Math.Abs(number * _unixMilliseconds) < 1e14)
            return Instant.FromUnixTimeMilliseconds((long)Math.Round(number * _unixMilliseconds));
        wrong = $"'{text}' is no number of {(_unixMilliseconds == 1 ? "milliseconds" : "seconds")} since 1970";
        return null;
    }

    private static DateTimeZone? ZoneOf(string id, FieldReader reader)
    {
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(id) is { } zone)
            return zone;
        reader.Refuse("zone", id, "a zone of the tz database would be right, such as Europe/Vienna");
        return null;
    }

    private static DateTimeZone? FixedZone(string typed, FieldReader reader)
    {
        if (OffsetPattern.CreateWithInvariantCulture("+HH:mm").Parse(typed) is { Success: true, Value: var offset })
            return DateTimeZone.ForOffset(offset);
        reader.Refuse("utc offset", typed, "hours and minutes before or behind UTC would be right, such as +01:00");
        return null;
    }

    private static LocalDateTimePattern? Pattern(string format)
    {
        try
        {
            var pattern = LocalDateTimePattern.CreateWithInvariantCulture(format);
            // A pattern without a day or a year would read every line as the same date.
            LocalDateTime tried = new(2023, 11, 19, 0, 0);
            return pattern.Parse(pattern.Format(tried)) is { Success: true, Value: var again } && again == tried ? pattern : null;
        }
        catch (InvalidPatternException)
        {
            return null;
        }
    }
}
