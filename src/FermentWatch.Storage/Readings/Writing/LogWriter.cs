using System.Threading.Channels;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Storage.Readings.Writing;

/// <summary>
/// The one writer of readings.db, on a thread of its own. Jobs that arrive while a commit is under way go together into the next
/// one, so that the price of a sync is shared by everyone who waits for it.
/// </summary>
internal sealed class LogWriter : IAsyncDisposable
{
    private const int MostJobsWaiting = 4096;
    private const int MostRowsInOneCommit = 4096;

    private readonly string _path;
    private readonly TimeSpan _lockPatience;
    private readonly Channel<WriteJob> _queue =
        Channel.CreateBounded<WriteJob>(new BoundedChannelOptions(MostJobsWaiting) { SingleReader = true });
    private readonly Task _loop;
    private WriteSession? _session;
    private long _commits;

    /// <param name="path">A database that is there and checked; it is never created here.</param>
    /// <param name="lockPatience">How long a commit waits for another process that holds the file.</param>
    internal LogWriter(string path, TimeSpan lockPatience)
    {
        _path = path;
        _lockPatience = lockPatience;
        _loop = Task.Factory.StartNew(Loop, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
    }

    /// <summary>Transactions committed since the start.</summary>
    internal long Commits => Interlocked.Read(ref _commits);

    /// <summary>Completes after the job is committed. Cancelled means that nothing of it was stored.</summary>
    /// <exception cref="IOException">The database could not be written; nothing of the job was stored.</exception>
    internal async Task<T> RunAsync<T>(WriteJob<T> job, CancellationToken cancellationToken)
    {
        try
        {
            await _queue.Writer.WriteAsync(job, cancellationToken).ConfigureAwait(false);
        }
        catch (ChannelClosedException)
        {
            throw new ObjectDisposedException(nameof(ReadingStore));
        }

        await using (cancellationToken.Register(() => job.Withdraw(cancellationToken)).ConfigureAwait(false))
            return await job.Done.ConfigureAwait(false);
    }

    /// <summary>Takes no more jobs, commits those that wait, and closes the file.</summary>
    public async ValueTask DisposeAsync()
    {
        _queue.Writer.TryComplete();
        await _loop.ConfigureAwait(false);
    }

    private void Loop()
    {
        var group = new List<WriteJob>();
        while (_queue.Reader.WaitToReadAsync().AsTask().GetAwaiter().GetResult())
        {
            Gather(group);
            if (group.Count > 0)
                Commit(group);
            group.Clear();
        }

        _session?.Dispose();
    }

    private void Gather(List<WriteJob> group)
    {
        int rows = 0;
        while (rows < MostRowsInOneCommit && _queue.Reader.TryRead(out var job))
        {
            if (!job.TryTake())
                continue;
            group.Add(job);
            rows += job.Rows;
        }
    }

    private void Commit(List<WriteJob> group)
    {
        if (TryCommit(group) is not { } trouble)
            return;
        if (group.Count == 1)
        {
            group[0].Fail(trouble);
            return;
        }

        // One job's trouble must not cost the others theirs: each gets a transaction of its own.
        foreach (var job in group)
        {
            if (TryCommit([job]) is { } own)
                job.Fail(own);
        }
    }

    private Exception? TryCommit(List<WriteJob> group)
    {
        try
        {
            _session ??= new WriteSession(_path, _lockPatience);
            _session.Begin();
            foreach (var job in group)
                job.Write(_session);
            _session.Commit();
        }
        catch (Exception trouble)
        {
            // Whatever it was, it goes to the callers; a fresh connection takes the next group, and rolls this one back.
            _session?.Dispose();
            _session = null;
            return trouble is SqliteException ? new IOException($"{_path} could not be written: {trouble.Message}", trouble) : trouble;
        }

        Interlocked.Increment(ref _commits);
        foreach (var job in group)
            job.Succeed();
        return null;
    }
}
