using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Storage.Records.Conversions;

/// <summary>Dates as ISO text, which sorts as dates do. Text that is none reads as 1 January 1970.</summary>
internal sealed class LocalDateConverter()
    : ValueConverter<LocalDate, string>(date => LocalDatePattern.Iso.Format(date), stored => Read(stored))
{
    private static LocalDate Read(string stored) =>
        LocalDatePattern.Iso.Parse(stored).TryGetValue(new LocalDate(1970, 1, 1), out LocalDate date) ? date : new LocalDate(1970, 1, 1);
}
