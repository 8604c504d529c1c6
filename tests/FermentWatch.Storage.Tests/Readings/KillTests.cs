using System.Diagnostics;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Readings;
using FermentWatch.Storage.Tests.Children;
using NodaTime;
using Xunit.Abstractions;

namespace FermentWatch.Storage.Tests.Readings;

/// <summary>SIGKILL and a full disk against a process that writes.</summary>
public sealed class KillTests(ITestOutputHelper output) : IDisposable
{
    private const int Workers = 4;

    /// <summary>After a kill a sender sends again what it may not have seen acknowledged, and a little more.</summary>
    private const int SentAgain = 5;

    private readonly TemporaryFolder _folder = new();
    private readonly Random _random = new(20251004);

    private string DatabasePath => _folder.File("readings.db");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task AppendAsync_KilledAgainAndAgain_KeepsWhatWasAcknowledged()
    {
        int[] acknowledged = new int[Workers];
        int kills = TestLength.Of(reduced: 5, full: 20);
        for (int kill = 0; kill < kills; kill++)
            await AppendUntilKilledAsync(acknowledged, afterGroups: _random.Next(1, 600));

        await using var store = ReadingStore.Open(DatabasePath);
        int timedRows = 0, bareRows = 0;
        for (int worker = 0; worker < Workers; worker++)
        {
            var timed = await ReadAsync(store, worker);
            timedRows += timed.Count;
            // The key allows no second row: equal sequences mean each exactly once, with its value. Beyond the last acknowledged
            // one there may be the group that the kill cut off from its acknowledgement.
            Assert.InRange(timed.Count, acknowledged[worker], acknowledged[worker] + 1);
            Assert.Equal(
                Enumerable.Range(0, timed.Count).Select(index => new JudgedReading(Appender.Timed(worker, index), Verdict.Pending)), timed);

            var bare = await ReadAsync(store, Appender.BareSensor(worker));
            bareRows += bare.Count;
            var expected = Enumerable.Range(0, acknowledged[worker]).Select(index => Appender.Value(worker, index));
            Assert.Empty(expected.Except(bare.Select(entry => entry.Reading.Value)));
        }

        output.WriteLine($"{kills} kills: {acknowledged.Sum()} timed readings acknowledged, {timedRows} stored, none twice; {acknowledged.Sum()} "
            + $"bare ones acknowledged, {bareRows} stored, {bareRows - acknowledged.Sum()} of them sent again after a kill");
        Assert.Equal("ok", TemporaryFolder.Sql(DatabasePath, "PRAGMA integrity_check"));
    }

    [Fact]
    public async Task AppendAsync_DiskFull_IsAnIOExceptionAndGoesOnOnceThereIsRoom()
    {
        using var child = ChildProcess.StartWithFileLimit(kilobytes: 512, "fill", DatabasePath);
        string[] refused = (await child.StandardOutput.ReadLineAsync())!.Split(' ', 3);
        Assert.Equal("refused", refused[0]);
        Assert.Contains("readings.db could not be written", refused[2], StringComparison.Ordinal);
        output.WriteLine($"full after {refused[1]} groups of {Filler.GroupSize}: {refused[2]}");

        using (var room = Process.Start("prlimit", ["--pid", $"{child.Id}", "--fsize=unlimited:"]))
            await room.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(10));
        await child.StandardInput.WriteLineAsync();
        Assert.Equal($"stored {refused[1]}", await child.StandardOutput.ReadLineAsync());
        await child.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(10));

        await using var store = ReadingStore.Open(DatabasePath);
        int groups = int.Parse(refused[1]) + 1;
        Assert.Equal(
            Enumerable.Range(0, groups * Filler.GroupSize).Select(index => (double)index),
            (await ReadAsync(store, 1)).Select(entry => entry.Reading.Value));
    }

    private async Task AppendUntilKilledAsync(int[] acknowledged, int afterGroups)
    {
        using var child = ChildProcess.Start(
            ["append", DatabasePath, .. acknowledged.Select(count => $"{Math.Max(0, count - SentAgain)}")]);
        int groups = 0;
        while (await child.StandardOutput.ReadLineAsync() is { } line)
        {
            int[] parts = [.. line.Split(' ').Select(int.Parse)];
            acknowledged[parts[0]] = Math.Max(acknowledged[parts[0]], parts[1] + 1);
            if (++groups == afterGroups)
                child.Kill();
        }

        await child.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(10));
        Assert.True(groups >= afterGroups, $"The writer ended by itself after {groups} groups.");
    }

    private static Task<IReadOnlyList<JudgedReading>> ReadAsync(ReadingStore store, int sensor) =>
        store.Log.ReadAsync(sensor, Quantity.Temperature, Make.Noon - Duration.FromDays(1), Make.Noon + Duration.FromDays(1), default);
}
