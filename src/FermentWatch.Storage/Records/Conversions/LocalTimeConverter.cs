using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Storage.Records.Conversions;

/// <summary>Times of day as ISO text. Text that is none reads as noon.</summary>
internal sealed class LocalTimeConverter()
    : ValueConverter<LocalTime, string>(time => LocalTimePattern.ExtendedIso.Format(time), stored => Read(stored))
{
    private static LocalTime Read(string stored) =>
        LocalTimePattern.ExtendedIso.Parse(stored).TryGetValue(LocalTime.Noon, out LocalTime time) ? time : LocalTime.Noon;
}
