using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Storage.Records.Conversions;

/// <summary>Dates as ISO text, which sorts as dates do.</summary>
internal sealed class LocalDateConverter()
    : ValueConverter<LocalDate, string>(date => LocalDatePattern.Iso.Format(date), stored => LocalDatePattern.Iso.Parse(stored).Value);
