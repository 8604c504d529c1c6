namespace FermentWatch.Scenario.Tests.Yearly;

/// <summary>When, in the course of some webhooks, a process is to be killed.</summary>
/// <param name="nth">The webhook at which it is, counted from 1.</param>
/// <param name="isHeld">Whether that one is left without an answer until then.</param>
internal sealed class KillMoment(int nth, bool isHeld)
{
    private readonly TaskCompletionSource _reached = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly TaskCompletionSource _ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private int _came;
    private int _unanswered;

    /// <summary>Every webhook is answered at once.</summary>
    public static KillMoment Never => new(0, false);

    /// <summary>Completes as the webhook comes in.</summary>
    public Task Reached => _reached.Task.WaitAsync(TimeSpan.FromMinutes(3), TimeProvider.System);

    /// <summary>The status of the answer to the next webhook, when it is to be given.</summary>
    public async Task<int> AnswerAsync()
    {
        Interlocked.Increment(ref _unanswered);
        if (Interlocked.Increment(ref _came) == nth)
        {
            _reached.TrySetResult();
            if (isHeld)
                await _ended.Task;
        }
        Interlocked.Decrement(ref _unanswered);
        return 204;
    }

    /// <summary>It was killed. Returns how many webhooks had come in and had no answer yet.</summary>
    public int End()
    {
        int unanswered = Volatile.Read(ref _unanswered);
        _ended.TrySetResult();
        return unanswered;
    }
}
