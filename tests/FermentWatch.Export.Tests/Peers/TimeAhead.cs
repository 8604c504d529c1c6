namespace FermentWatch.Export.Tests.Peers;

/// <summary>The machine's clock, which can be sent ahead to end a wait.</summary>
internal sealed class TimeAhead : TimeProvider
{
    private long _aheadTicks;

    public void Ahead(TimeSpan span) => _aheadTicks += span.Ticks;

    public override long TimestampFrequency => TimeSpan.TicksPerSecond;

    public override long GetTimestamp() => System.GetElapsedTime(0).Ticks + _aheadTicks;
}
