using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Storage.Records.Conversions;

/// <summary>Times of day as ISO text.</summary>
internal sealed class LocalTimeConverter()
    : ValueConverter<LocalTime, string>(time => LocalTimePattern.ExtendedIso.Format(time), stored => LocalTimePattern.ExtendedIso.Parse(stored).Value);
