namespace FermentWatch.Service.Tests.Demo;

/// <summary>Keeps what is written and tells when some words have come.</summary>
internal sealed class WaitingWriter(string words) : StringWriter
{
    private readonly TaskCompletionSource _seen = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Completes at the first flush after the words were written.</summary>
    public Task Seen => _seen.Task;

    public override void Flush()
    {
        base.Flush();
        if (ToString().Contains(words, StringComparison.Ordinal))
            _seen.TrySetResult();
    }
}
