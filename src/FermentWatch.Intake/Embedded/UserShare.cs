namespace FermentWatch.Intake.Embedded;

/// <summary>
/// What one user may have of the broker, over all its connections: how fast it sends, and how many bytes of it may wait to be
/// written down. Beyond that its own connections are not read from, and nobody else waits for it.
/// </summary>
internal sealed class UserShare(int messagesPerSecond, int waitingBytes, TimeProvider time)
{
    private readonly Lock _gate = new();
    private readonly MessagePace? _pace = messagesPerSecond > 0 ? new MessagePace(messagesPerSecond, time) : null;
    private readonly Queue<(int Bytes, TaskCompletionSource Admitted)> _queue = new();
    private long _waiting;

    /// <summary>How long a message must wait so that the user sends no faster than it may; zero as a rule.</summary>
    public TimeSpan Take()
    {
        lock (_gate)
            return _pace?.Take() ?? TimeSpan.Zero;
    }

    /// <summary>Completes when there is room for so many bytes to wait; whatever their number, where nothing else does.</summary>
    public Task EnterAsync(int bytes)
    {
        lock (_gate)
        {
            if (_queue.Count == 0 && Fits(bytes))
            {
                _waiting += bytes;
                return Task.CompletedTask;
            }
            var admitted = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            _queue.Enqueue((bytes, admitted));
            return admitted.Task;
        }
    }

    /// <summary>They are written down, or never will be.</summary>
    public void Leave(int bytes)
    {
        lock (_gate)
        {
            _waiting -= bytes;
            while (_queue.TryPeek(out var next) && Fits(next.Bytes))
            {
                _queue.Dequeue();
                _waiting += next.Bytes;
                next.Admitted.SetResult();
            }
        }
    }

    private bool Fits(int bytes) => _waiting == 0 || _waiting + bytes <= waitingBytes;
}
