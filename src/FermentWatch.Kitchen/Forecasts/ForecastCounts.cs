namespace FermentWatch.Kitchen.Forecasts;

/// <summary>What forecasts cost since the service started.</summary>
public sealed class ForecastCounts
{
    private long _computed;
    private long _ticks;

    /// <summary>Forecasts that were computed.</summary>
    public long Computed => Interlocked.Read(ref _computed);

    /// <summary>How long all of them took together, by the machine's clock, whatever time the household has.</summary>
    public TimeSpan Took => TimeSpan.FromTicks(Interlocked.Read(ref _ticks));

    internal void Count(TimeSpan took)
    {
        Interlocked.Increment(ref _computed);
        Interlocked.Add(ref _ticks, took.Ticks);
    }
}
