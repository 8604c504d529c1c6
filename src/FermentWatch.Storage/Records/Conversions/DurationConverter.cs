using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using NodaTime;

namespace FermentWatch.Storage.Records.Conversions;

/// <summary>Spans of time as whole milliseconds.</summary>
internal sealed class DurationConverter()
    : ValueConverter<Duration, long>(span => (long)span.TotalMilliseconds, stored => Duration.FromMilliseconds(stored));
