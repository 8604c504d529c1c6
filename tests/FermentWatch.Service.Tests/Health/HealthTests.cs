using System.Net;
using System.Text.Json;
using FermentWatch.Kitchen.Health;
using FermentWatch.RunningTests;
using FermentWatch.Service.Loops;
using FermentWatch.Service.Tests.Api;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Service.Tests.Health;

public class HealthTests
{
    private static readonly Instant Start = Instant.FromUtc(2026, 10, 4, 12, 0);

    [Fact]
    public async Task Of_LoopThatFails_IsNotReadyAndSaysSinceWhenAndWhyUntilItRunsWell()
    {
        var clock = new FakeTimeProvider(Start.ToDateTimeOffset());
        Exception? fault = null;
        using var loop = new Loop("round", (_, _) => fault is null ? Task.CompletedTask : throw fault, clock, NullLogger<Loop>.Instance);
        await loop.StartAsync(default);
        await loop.WakeAndWaitAsync(default);
        Assert.True(Report(loop, clock).IsReady);

        fault = new IOException("two\nlines");
        clock.Advance(TimeSpan.FromSeconds(30));
        await loop.WakeAndWaitAsync(default);
        clock.Advance(TimeSpan.FromSeconds(20));
        await loop.WakeAndWaitAsync(default);
        HealthReport failing = Report(loop, clock);
        Assert.Equal((false, true), (failing.IsReady, failing.IsLive));
        Assert.Equal("failing since 2026-10-04T12:00Z: two lines", Assert.Single(failing.Loops).Trouble);

        fault = null;
        await loop.WakeAndWaitAsync(default);
        Assert.True(Report(loop, clock).IsReady);
        await loop.StopAsync(default);
    }

    [Fact]
    public async Task Of_LoopThatHangs_IsNoLongerLiveAfterTenMinutes()
    {
        var clock = new FakeTimeProvider(Start.ToDateTimeOffset());
        var hangs = new TaskCompletionSource();
        using var loop = new Loop("delivery", (_, _) => hangs.Task, clock, NullLogger<Loop>.Instance);
        await loop.StartAsync(default);
        Task pass = loop.WakeAndWaitAsync(default);
        while (loop.RunningSince is null)
            await Task.Yield();
        clock.Advance(TimeSpan.FromMinutes(10));
        Assert.True(Report(loop, clock).IsLive);
        clock.Advance(TimeSpan.FromMinutes(1));
        Assert.Equal((false, false), (Report(loop, clock).IsLive, Report(loop, clock).IsReady));
        hangs.SetResult();
        await pass;
        Assert.True(Report(loop, clock).IsLive);
        await loop.StopAsync(default);
    }

    [Fact]
    public async Task Of_PassOfTwentyMinutesThatGoesOn_IsLive()
    {
        var clock = new FakeTimeProvider(Start.ToDateTimeOffset());
        var ends = new TaskCompletionSource();
        using var loop = new Loop("forecast", (_, _) => ends.Task, clock, NullLogger<Loop>.Instance);
        await loop.StartAsync(default);
        Task pass = loop.WakeAndWaitAsync(default);
        while (loop.RunningSince is null)
            await Task.Yield();
        for (int minute = 0; minute < 20; minute += 5)
        {
            clock.Advance(TimeSpan.FromMinutes(5));
            loop.Step();
            Assert.True(Report(loop, clock).IsLive);
        }
        ends.SetResult();
        await pass;
        await loop.StopAsync(default);
    }

    [Fact]
    public async Task Ready_ATableIsGone_AnswersWhichLoopsFailToMachinesAndWhatToDoToPeople()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        await kitchen.SettleAsync();
        Assert.Equal(HttpStatusCode.OK, (await script.Http.GetAsync("/healthz/ready")).StatusCode);
        Assert.Contains("Everything does its work.", await script.Http.GetStringAsync("/health"), StringComparison.Ordinal);

        Sql(kitchen, "ALTER TABLE notice RENAME TO lost");
        await kitchen.SettleAsync();
        HttpResponseMessage ready = await script.Http.GetAsync("/healthz/ready");
        string told = await ready.Content.ReadAsStringAsync();
        Assert.Equal(HttpStatusCode.ServiceUnavailable, ready.StatusCode);
        JsonElement[] loops = [.. JsonDocument.Parse(told).RootElement.GetProperty("loops").EnumerateArray()];
        Assert.Equal(["delivery"], loops.Where(loop => loop.GetProperty("state").GetString() == "failing")
            .Select(loop => loop.GetProperty("name").GetString()));
        Assert.DoesNotContain("no such table", told, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await script.Http.GetAsync("/healthz/live")).StatusCode);
        Assert.Contains("Part of the service stands still.", await script.Http.GetStringAsync("/jars"), StringComparison.Ordinal);
        Assert.Contains("no such table: notice", await script.Http.GetStringAsync("/health"), StringComparison.Ordinal);

        Sql(kitchen, "ALTER TABLE lost RENAME TO notice");
        await kitchen.SettleAsync();
        Assert.Equal(HttpStatusCode.OK, (await script.Http.GetAsync("/healthz/ready")).StatusCode);
    }

    [Fact]
    public void IsReady_FullDisk_IsNotThoughEveryLoopDoesItsWork()
    {
        var report = HealthReport.Of([], [], [], Start, Start);
        Assert.True(report.IsReady);
        Assert.False((report with { DiskIsFull = true }).IsReady);
        Assert.True((report with { DiskIsFull = true }).IsLive);
    }

    [Fact]
    public void SetAside_TheSameThingAgain_IsOneItemThatGoesWhenItGoesWell()
    {
        var clock = new FakeTimeProvider(Start.ToDateTimeOffset());
        var setAside = new SetAside(clock.ToClock());
        int added = 0;
        setAside.Added += (_, _) => added++;
        for (int pass = 0; pass < 3; pass++)
        {
            clock.Advance(TimeSpan.FromMinutes(pass));
            using SetAside.SetAsideRun run = setAside.Begin("forecast");
            Assert.False(run.Try("jar 7", () => throw new InvalidOperationException("no\nplace")));
            Assert.True(run.Try("jar 8", () => { }));
        }
        Assert.Equal([new SetAsideItem("forecast", "jar 7", "no place", Start, 3)], setAside.Items);
        Assert.Equal(1, added);
        using (SetAside.SetAsideRun run = setAside.Begin("forecast"))
            Assert.True(run.Try("jar 7", () => { }));
        Assert.Empty(setAside.Items);
    }

    [Fact]
    public void SetAside_AFullDisk_IsNoThingsFault()
    {
        using SetAside.SetAsideRun run = new SetAside(new FakeTimeProvider(Start.ToDateTimeOffset()).ToClock()).Begin("forecast");
        Assert.Throws<IOException>(() => run.Try("jar 7", () => throw new IOException("No space left on device")));
    }

    private static HealthReport Report(Loop loop, FakeTimeProvider clock) =>
        HealthReport.Of([loop.Signs], [], [], Start, clock.GetUtcNow().ToInstant());

    private static void Sql(RunningKitchen kitchen, string sql)
    {
        using var connection = new SqliteConnection($"Data Source={Path.Combine(kitchen.Folder, "records.db")};Pooling=False");
        connection.Open();
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
