using System.Diagnostics;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Readings;
using FermentWatch.Storage.Readings.Writing;
using Microsoft.Data.Sqlite;
using Xunit.Abstractions;

namespace FermentWatch.Storage.Tests.Readings.Writing;

public sealed class LogWriterTests(ITestOutputHelper output) : IAsyncLifetime, IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly ManualResetEventSlim _entered = new();
    private readonly ManualResetEventSlim _goOn = new();
    private LogWriter _writer = null!;

    private string DatabasePath => _folder.File("readings.db");

    public Task InitializeAsync()
    {
        ReadingSchema.CreateOrCheck(DatabasePath);
        _writer = new LogWriter(DatabasePath, TimeSpan.FromMilliseconds(20));
        return Task.CompletedTask;
    }

    public async Task DisposeAsync() => await _writer.DisposeAsync();

    public void Dispose()
    {
        _folder.Dispose();
        _entered.Dispose();
        _goOn.Dispose();
    }

    [Fact]
    public void WriteSession_Opened_SyncsEveryCommit()
    {
        // No kill of a process can show a missing sync; only a power cut would.
        using var session = new WriteSession(DatabasePath, TimeSpan.Zero);
        Assert.Equal(2L, session.Prepare("PRAGMA synchronous").Scalar());
        Assert.Equal("wal", session.Prepare("PRAGMA journal_mode").Scalar());
    }

    [Fact]
    public async Task RunAsync_JobsThatWaitedForACommit_AreCommittedTogether()
    {
        var first = HoldWriter();
        var waiting = Enumerable.Range(0, 10).Select(second => AppendAsync(second)).ToList();
        _goOn.Set();
        await Task.WhenAll([first, .. waiting]);

        Assert.Equal(2, _writer.Commits);
        Assert.Equal(10L, Count());
    }

    [Fact]
    public async Task RunAsync_CancelledWhileItWaits_StoresNothing()
    {
        using var cancel = new CancellationTokenSource();
        var first = HoldWriter();
        var waiting = AppendAsync(0, cancellationToken: cancel.Token);
        await cancel.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => waiting);
        _goOn.Set();
        await first;
        await AppendAsync(1);

        Assert.Equal(1L, Count());
    }

    [Fact]
    public async Task RunAsync_CancelledOnceTheWriterHasIt_IsCommittedAndSaysSo()
    {
        using var cancel = new CancellationTokenSource();
        var first = HoldWriter(cancel.Token);
        await cancel.CancelAsync();
        _goOn.Set();
        Assert.Equal(1, await first);
    }

    [Fact]
    public async Task RunAsync_OneJobOfAGroupFails_TheOthersAreStoredOnce()
    {
        var first = HoldWriter();
        var before = AppendAsync(0);
        var failing = _writer.RunAsync(new WriteJob<int>(1, _ => throw new InvalidOperationException("a bug")), default);
        var after = AppendAsync(1);
        _goOn.Set();

        Assert.Equal("a bug", (await Assert.ThrowsAsync<InvalidOperationException>(() => failing)).Message);
        Assert.Equal([new(1, 0, 0), new(1, 0, 0)], await Task.WhenAll(before, after));
        Assert.Equal(2L, Count());
        await first;
    }

    [Fact]
    public async Task RunAsync_FileHeldByAnotherProcess_IsAnIOExceptionForThoseCallersOnly()
    {
        using (var other = new SqliteConnection($"Data Source={DatabasePath};Pooling=False"))
        {
            other.Open();
            using var transaction = other.BeginTransaction(deferred: false);
            var refused = await Assert.ThrowsAsync<IOException>(() => AppendAsync(0));
            Assert.Contains("readings.db could not be written", refused.Message, StringComparison.Ordinal);
        }

        Assert.Equal(new AppendResult(1, 0, 0), await AppendAsync(1));
        Assert.Equal(1L, Count());
    }

    [Fact]
    public async Task RunAsync_FileGone_IsNeverMadeAnew()
    {
        await AppendAsync(0);
        await _writer.DisposeAsync();
        File.Delete(DatabasePath);
        _writer = new LogWriter(DatabasePath, TimeSpan.Zero);

        await Assert.ThrowsAsync<IOException>(() => AppendAsync(1));
        Assert.False(File.Exists(DatabasePath));
    }

    [Fact]
    public async Task RunAsync_WhileAReaderReads_DoesNotWaitForIt()
    {
        await AppendAsync(0);
        using var reader = new SqliteConnection($"Data Source={DatabasePath};Mode=ReadOnly;Pooling=False");
        reader.Open();
        using var transaction = reader.BeginTransaction(deferred: true);
        using var count = new SqliteCommand("SELECT count(*) FROM reading", reader, transaction);
        Assert.Equal(1L, count.ExecuteScalar());

        await AppendAsync(1);
        Assert.Equal(1L, count.ExecuteScalar());
        Assert.Equal(2L, Count());
    }

    [Fact]
    public async Task DisposeAsync_WithJobsWaiting_CommitsThemAndTakesNoMore()
    {
        var first = HoldWriter();
        var waiting = new[] { AppendAsync(0), AppendAsync(1) };
        var disposal = _writer.DisposeAsync();
        await Assert.ThrowsAsync<ObjectDisposedException>(() => AppendAsync(2));
        _goOn.Set();
        await disposal;

        // What waited hears of it on another thread, and may do so a moment after the writer has gone.
        await Task.WhenAll(waiting).WaitAsync(TimeSpan.FromMinutes(1));
        Assert.Equal(2L, Count());
        await first;
    }

    [Theory]
    [InlineData(1)]
    [InlineData(8)]
    [InlineData(64)]
    public async Task RunAsync_ManyCallers_ShareCommits(int callers)
    {
        int each = TestLength.Of(reduced: 1024, full: 16_384) / callers;
        long started = Stopwatch.GetTimestamp();
        await Task.WhenAll(Enumerable.Range(0, callers).Select(caller => Task.Run(async () =>
        {
            for (int index = 0; index < each; index++)
                await AppendAsync(index, sensor: caller);
        })));
        double seconds = Stopwatch.GetElapsedTime(started).TotalSeconds;

        int readings = each * callers;
        output.WriteLine($"{callers} callers, one reading a call: {readings / seconds:0} readings/s, {(double)readings / _writer.Commits:0.0} "
            + $"readings a commit, {seconds / _writer.Commits * 1000:0.000} ms a commit");
        Assert.Equal((long)readings, Count());
        Assert.InRange(_writer.Commits, 1, readings);
    }

    private Task<AppendResult> AppendAsync(int second, int sensor = 1, CancellationToken cancellationToken = default) =>
        _writer.RunAsync(
            new WriteJob<AppendResult>(1, session => AppendGroup.Write(session, [Make.Timed(second, second, sensor)])), cancellationToken);

    /// <summary>Keeps the writer within a transaction until it may go on.</summary>
    private Task<int> HoldWriter(CancellationToken cancellationToken = default)
    {
        var held = _writer.RunAsync(
            new WriteJob<int>(1, _ =>
            {
                _entered.Set();
                _goOn.Wait(CancellationToken.None);
                return 1;
            }),
            cancellationToken);
        _entered.Wait(CancellationToken.None);
        return held;
    }

    private object Count() => TemporaryFolder.Sql(DatabasePath, "SELECT count(*) FROM reading")!;
}
