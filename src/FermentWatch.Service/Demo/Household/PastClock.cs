using NodaTime;

namespace FermentWatch.Service.Demo.Household;

/// <summary>A clock that stands where it was set: the invented household lives through its past days by it.</summary>
internal sealed class PastClock : TimeProvider
{
    /// <summary>The present of the household.</summary>
    public Instant Now { get; set; }

    public override DateTimeOffset GetUtcNow() => Now.ToDateTimeOffset();
}
