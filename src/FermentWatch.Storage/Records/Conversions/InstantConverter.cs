using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using NodaTime;

namespace FermentWatch.Storage.Records.Conversions;

/// <summary>Instants as whole milliseconds since the Unix epoch; what is finer is dropped.</summary>
internal sealed class InstantConverter()
    : ValueConverter<Instant, long>(instant => instant.ToUnixTimeMilliseconds(), stored => Instant.FromUnixTimeMilliseconds(stored));
