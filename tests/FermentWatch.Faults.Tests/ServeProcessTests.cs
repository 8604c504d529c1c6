using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Runtime.Versioning;
using FermentWatch.Intake.Tests;
using FermentWatch.TestKit;
using Microsoft.Data.Sqlite;
using Xunit.Abstractions;

namespace FermentWatch.Faults.Tests;

/// <summary>The service as a process: its files, its lock, and how it ends when it cannot start or must stop.</summary>
[SupportedOSPlatform("linux")]
public sealed class ServeProcessTests(ITestOutputHelper output) : IDisposable
{
    private static readonly TimeSpan _stopsWithin = TimeSpan.FromSeconds(2);

    private readonly DirectoryInfo _root = Directory.CreateTempSubdirectory("fermentwatch-serve-");

    private string Folder => Path.Combine(_root.FullName, "data");

    public void Dispose() => _root.Delete(recursive: true);

    [Fact]
    public async Task Serve_WhateverTheUmask_ItsFilesAreTheOwnersOnly()
    {
        await using (ServiceProcess service = await ServiceProcess.Start(Folder, "umask 000").UpAsync())
        {
            AssertPrivate();
            Assert.True(File.Exists(Path.Combine(Folder, "readings.db-wal")));
            await service.StopAsync();
        }
        // As an earlier version left them.
        foreach (string file in Directory.GetFiles(Folder, "*.db"))
            File.SetUnixFileMode(file, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.GroupRead | UnixFileMode.OtherRead);
        await using ServiceProcess again = await ServiceProcess.Start(Folder, "umask 000").UpAsync();
        AssertPrivate();
    }

    [Fact]
    public async Task Serve_FolderThatIsServed_IsRefusedInOneLineAndFreeAfterAKill()
    {
        await using ServiceProcess first = await ServiceProcess.Start(Folder).UpAsync();
        await using (ServiceProcess second = ServiceProcess.Start(Folder))
        {
            Assert.Equal(1, await second.EndedAsync());
            string line = Assert.Single(second.Errors);
            Assert.Equal(
                $"The service could not start: {Folder} is served by another FermentWatch already. "
                + "Stop that one first, or give this one a Storage:Folder of its own.", line);
            AssertNoTrace(second);
        }
        await first.SignalAsync("KILL");
        await first.EndedAsync();
        await using ServiceProcess third = await ServiceProcess.Start(Folder).UpAsync();
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Serve_PortThatIsTaken_IsOneLineWithoutATrace(bool ofThePages)
    {
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        int port = ((IPEndPoint)taken.LocalEndpoint).Port;
        await using ServiceProcess service = ServiceProcess.Start(Folder, webPort: ofThePages ? port : null, mqttPort: ofThePages ? null : port);
        Assert.Equal(1, await service.EndedAsync());
        string what = ofThePages ? "pages" : "broker", setting = ofThePages ? "WEB" : "MQTT";
        Assert.Equal(
            string.Create(CultureInfo.InvariantCulture,
            $"Port {port} of the {what} is taken: stop what has it, or take another, such as FERMENTWATCH__{setting}__PORT={port + 1}."),
            Assert.Single(service.Errors));
        AssertNoTrace(service);
    }

    [Theory]
    [InlineData(300)]
    [InlineData(700)]
    [InlineData(1100)]
    [InlineData(1500)]
    [InlineData(2000)]
    [InlineData(3000)]
    [InlineData(4500)]
    public async Task Serve_ToldToStopWhileItStarts_EndsWithoutATrace(int afterMilliseconds)
    {
        await using ServiceProcess service = ServiceProcess.Start(Folder);
        await Task.Delay(TimeSpan.FromMilliseconds(afterMilliseconds), TimeProvider.System);
        await service.StopAsync();
        // Before the program itself runs, the signal ends the process.
        Assert.Contains(service.Process.ExitCode, (int[])[0, 143]);
        Assert.InRange(service.Errors.Count, 0, 1);
        AssertNoTrace(service);
    }

    [Fact]
    public async Task Serve_ToldToStopWhileABacklogIsJudged_EndsWithinTwoSecondsAndGoesOnLater()
    {
        TimeSpan idle;
        await using (ServiceProcess empty = await ServiceProcess.Start(Folder).UpAsync())
            idle = await empty.StopAsync();
        const int rows = 400_000;
        Execute($"""
            WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < {rows})
            INSERT INTO reading SELECT i % 4 + 1, 1, 1790000000000 + i * 25, 20 + i % 7 * 0.3, 1790000000000 + {rows} * 25, 2, 0, i FROM n;
            INSERT INTO verdict_count VALUES(1, 0, {rows / 4}), (2, 0, {rows / 4}), (3, 0, {rows / 4}), (4, 0, {rows / 4});
            """);
        await using ServiceProcess service = await ServiceProcess.Start(Folder).UpAsync();
        await Eventually.TrueAsync(() => Count("verdict <> 0") > 0, "judging has begun");
        long waiting = Count("verdict = 0");
        TimeSpan took = await service.StopAsync();
        output.WriteLine($"{waiting} of {rows} waited to be judged; stopped within {took.TotalMilliseconds:F0} ms, without a backlog within "
            + $"{idle.TotalMilliseconds:F0} ms");
        Assert.True(waiting > 0, "the backlog was judged before it could be stopped");
        Assert.Equal(0, service.Process.ExitCode);
        // What a stop takes on this machine anyhow is none of the backlog's.
        Assert.InRange(took, TimeSpan.Zero, _stopsWithin + idle);
        Assert.Empty(service.Errors);
        AssertNoTrace(service);
    }

    [Fact]
    public async Task Serve_TooFewFilesMayBeOpen_IsOneLineThatSaysWhatToRaise()
    {
        await using ServiceProcess service = ServiceProcess.Start(Folder, "ulimit -n 300");
        Assert.Equal(1, await service.EndedAsync());
        Assert.Equal(
            "fermentwatch needs to open 2048 files and may open 300: raise the limit (ulimit -n, or LimitNOFILE of the unit).",
            Assert.Single(service.Errors));
        AssertNoTrace(service);
    }

    [Fact]
    public async Task Serve_MoreConnectionsThanFilesMayBeOpen_LivesOnAndLetsSensorsIn()
    {
        await using ServiceProcess service = await ServiceProcess.Start(Folder, "ulimit -n 2048").UpAsync();
        var sockets = new List<Socket>();
        try
        {
            for (int i = 0; i < 2200; i++)
            {
                var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
                sockets.Add(socket);
                await TryConnectAsync(socket, i % 2 == 0 ? service.MqttPort : service.WebPort);
            }
        }
        finally
        {
            sockets.ForEach(socket => socket.Dispose());
        }
        await service.UpAsync();
        using var sensor = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);
        Assert.True(await TryConnectAsync(sensor, service.MqttPort));
        Assert.Empty(service.Errors);
        AssertNoTrace(service);
    }

    private static async Task<bool> TryConnectAsync(Socket socket, int port)
    {
        try
        {
            await socket.ConnectAsync(IPAddress.Loopback, port).WaitAsync(TimeSpan.FromMinutes(3));
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }

    private void AssertPrivate()
    {
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute, File.GetUnixFileMode(Folder));
        string[] files = Directory.GetFiles(Folder, "*", SearchOption.AllDirectories);
        Assert.True(files.Length > 4);
        Assert.All(files, file =>
            Assert.True(File.GetUnixFileMode(file) == (UnixFileMode.UserRead | UnixFileMode.UserWrite), $"{file} is {File.GetUnixFileMode(file)}"));
    }

    private static void AssertNoTrace(ServiceProcess service) =>
        Assert.DoesNotContain(service.Output.Concat(service.Errors), line => line.StartsWith("   at ", StringComparison.Ordinal)
            || line.Contains("Unhandled exception", StringComparison.Ordinal));

    private void Execute(string sql)
    {
        using SqliteConnection connection = Open();
        using var command = new SqliteCommand(sql, connection) { CommandTimeout = 120 };
        command.ExecuteNonQuery();
    }

    private long Count(string which)
    {
        using SqliteConnection connection = Open();
        using var command = new SqliteCommand($"SELECT count(*) FROM reading WHERE {which}", connection);
        return (long)command.ExecuteScalar()!;
    }

    private SqliteConnection Open()
    {
        var connection = new SqliteConnection($"Data Source={Path.Combine(Folder, "readings.db")};Pooling=False");
        connection.Open();
        return connection;
    }
}
