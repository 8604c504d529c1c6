using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Storage.Records.Conversions;

/// <summary>Spans of time as whole milliseconds; a number too large for one reads as ten thousand years.</summary>
internal sealed class DurationConverter()
    : ValueConverter<Duration, long>(span => (long)span.TotalMilliseconds, stored => Read(stored))
{
    private static readonly long Longest = (long)Duration.FromDays(3_652_425).TotalMilliseconds;

    private static Duration Read(long stored) => Duration.FromMilliseconds(Math.Clamp(stored, -Longest, Longest));
}

/// <summary>Members of an enumeration by name; a name that this version does not know reads as the one that is given.</summary>
internal sealed class EnumNameConverter<T>(T unknown)
    : ValueConverter<T, string>(value => value.ToString(), stored => Read(stored, unknown))
    where T : struct, Enum
{
    private static T Read(string stored, T unknown) => Enum.TryParse(stored, out T value) && Enum.IsDefined(value) ? value : unknown;
}

/// <summary>
/// Instants as whole milliseconds since the Unix epoch; what is finer is dropped. A number that is no instant (or so far away that
/// reckoning with it would fail) reads as the nearest that is: one damaged row must not keep all others from being read.
/// </summary>
internal sealed class InstantConverter()
    : ValueConverter<Instant, long>(instant => instant.ToUnixTimeMilliseconds(), stored => Read(stored))
{
    private static readonly long Earliest = Instant.FromUtc(1, 1, 1, 0, 0).ToUnixTimeMilliseconds();
    private static readonly long Latest = Instant.FromUtc(9998, 12, 31, 0, 0).ToUnixTimeMilliseconds();

    internal static Instant Read(long stored) => Instant.FromUnixTimeMilliseconds(Math.Clamp(stored, Earliest, Latest));
}

/// <summary>Dates as ISO text, which sorts as dates do. Text that is none reads as 1 January 1970.</summary>
internal sealed class LocalDateConverter()
    : ValueConverter<LocalDate, string>(date => LocalDatePattern.Iso.Format(date), stored => Read(stored))
{
    private static LocalDate Read(string stored) =>
        LocalDatePattern.Iso.Parse(stored).TryGetValue(new LocalDate(1970, 1, 1), out LocalDate date) ? date : new LocalDate(1970, 1, 1);
}

/// <summary>Times of day as ISO text. Text that is none reads as noon.</summary>
internal sealed class LocalTimeConverter()
    : ValueConverter<LocalTime, string>(time => LocalTimePattern.ExtendedIso.Format(time), stored => Read(stored))
{
    private static LocalTime Read(string stored) =>
        LocalTimePattern.ExtendedIso.Parse(stored).TryGetValue(LocalTime.Noon, out LocalTime time) ? time : LocalTime.Noon;
}
