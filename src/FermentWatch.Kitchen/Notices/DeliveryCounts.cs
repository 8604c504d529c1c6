namespace FermentWatch.Kitchen.Notices;

/// <summary>How attempts to deliver ended since the service started, by channel.</summary>
public sealed class DeliveryCounts
{
    private readonly long[,] _attempts = new long[Last<Channel>() + 1, Last<NoticeState>() + 1];

    /// <summary>Attempts by a channel that left their notice so: <see cref="NoticeState.Queued"/> where it will be tried again.</summary>
    public long Attempts(Channel channel, NoticeState left) => Interlocked.Read(ref _attempts[(int)channel, (int)left]);

    internal void Count(Channel channel, NoticeState left) => Interlocked.Increment(ref _attempts[(int)channel, (int)left]);

    private static int Last<T>() where T : struct, Enum => Enum.GetValues<T>().Max(value => Convert.ToInt32(value, null));
}
