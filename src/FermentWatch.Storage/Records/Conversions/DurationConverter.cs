using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using NodaTime;

namespace FermentWatch.Storage.Records.Conversions;

/// <summary>Spans of time as whole milliseconds; a number too large for one reads as ten thousand years.</summary>
internal sealed class DurationConverter()
    : ValueConverter<Duration, long>(span => (long)span.TotalMilliseconds, stored => Read(stored))
{
    private static readonly long Longest = (long)Duration.FromDays(3_652_425).TotalMilliseconds;

    private static Duration Read(long stored) => Duration.FromMilliseconds(Math.Clamp(stored, -Longest, Longest));
}
