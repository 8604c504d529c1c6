using System.Collections.Concurrent;
using System.Threading.Channels;
using FermentWatch.Intake.Door;

namespace FermentWatch.Intake.Embedded;

/// <summary>
/// Messages of one client that are being written down, by packet identifier. The next message is read while they are, so that the
/// whole window of a client shares a commit; each acknowledgement waits for its own. Their number is bounded, and beyond it the
/// client is not read from.
/// </summary>
internal sealed class CommitsUnderWay
{
    /// <summary>Most messages of one client under way.</summary>
    public const int Most = 256;

    private readonly Channel<bool> _places = Channel.CreateBounded<bool>(Most);
    private readonly ConcurrentDictionary<ushort, Task<DoorOutcome>> _byPacket = new();

    /// <summary>Starts to take a message in, when there is a place.</summary>
    public async Task BeginAsync(ushort packet, Func<Task<DoorOutcome>> take)
    {
        await _places.Writer.WriteAsync(true);
        Task<DoorOutcome> taking = TakeAsync(take);
        // A client may not use an identifier again before its acknowledgement. One that does waits for both.
        if (_byPacket.TryGetValue(packet, out Task<DoorOutcome>? before) && !before.IsCompleted)
            taking = BothAsync(before, taking);
        _byPacket[packet] = taking;
    }

    /// <summary>What became of the message with this identifier; null if none was begun.</summary>
    /// <exception cref="IOException">It was not stored and must not be acknowledged.</exception>
    public async Task<DoorOutcome?> OutcomeAsync(ushort packet) =>
        _byPacket.TryRemove(packet, out Task<DoorOutcome>? taking) ? await taking : null;

    private async Task<DoorOutcome> TakeAsync(Func<Task<DoorOutcome>> take)
    {
        try
        {
            return await take();
        }
        finally
        {
            _places.Reader.TryRead(out _);
        }
    }

    private static async Task<DoorOutcome> BothAsync(Task<DoorOutcome> first, Task<DoorOutcome> second)
    {
        await first;
        return await second;
    }
}
