using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using NodaTime;

namespace FermentWatch.Storage.Records.Conversions;

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
