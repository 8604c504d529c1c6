using NodaTime;

namespace FermentWatch.Kitchen.Judging;

/// <summary>Arithmetic of instants that ends at the first and the last instant there is instead of failing beyond it.</summary>
internal static class Bounded
{
    public static Instant Later(Instant at, Duration by) => at > Instant.MaxValue - by ? Instant.MaxValue : at + by;

    public static Instant Earlier(Instant at, Duration by) => at < Instant.MinValue + by ? Instant.MinValue : at - by;
}
