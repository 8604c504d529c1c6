using System.Net;
using System.Net.Http.Json;
using FermentWatch.Service.CommandLine;
using FermentWatch.TestKit;
using Microsoft.Data.Sqlite;

namespace FermentWatch.Faults.Tests;

/// <summary>A backup of a service at work, restored on what might be another machine: people stay signed in, sensors are let in.</summary>
public sealed class BackupElsewhereTests : IDisposable
{
    private readonly DirectoryInfo _root = Directory.CreateTempSubdirectory("fermentwatch-backup-");

    private string Home => Path.Combine(_root.FullName, "home");

    private string Elsewhere => Path.Combine(_root.FullName, "elsewhere");

    private string Kept => Path.Combine(_root.FullName, "kept");

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        _root.Delete(recursive: true);
    }

    [Fact]
    public async Task Restore_Elsewhere_GoesOnWithTheSameSessionsAndCredentials()
    {
        string password = Line((await VerbAsync(Home, "member", "add", "Robin")).Output, "password");
        string sensor = (await VerbAsync(Home, "sensor", "add", "cellar")).Output;
        string cookie, backup;
        await using (ServiceProcess service = await ServiceProcess.Start(Home).UpAsync())
        {
            cookie = await SignInAsync(service, password);
            Assert.Equal((0, ""), await SendAsync(service, sensor, "19.5"));
            (int code, string output, string error) = await VerbAsync(Home, "backup", "--to", Kept);
            Assert.Equal((0, ""), (code, error));
            backup = output[..output.IndexOf(": ", StringComparison.Ordinal)];
            Assert.Matches(@"^.*: [\d,]+ bytes, checked\.\n$", output);

            (code, output, error) = await VerbAsync(Home, "restore", backup, "--replace");
            Assert.Equal((1, ""), (code, output));
            Assert.StartsWith($"Nothing was restored. {Home} is served by another FermentWatch already.", error, StringComparison.Ordinal);
        }
        Assert.Equal((0, $"The household of {backup} is in {Elsewhere}.\n", ""), await VerbAsync(Elsewhere, "restore", backup));
        await using ServiceProcess there = await ServiceProcess.Start(Elsewhere).UpAsync();
        Assert.Equal(HttpStatusCode.OK, await AskAsync(there, cookie));
        Assert.Equal(HttpStatusCode.Unauthorized, await AskAsync(there, "fermentwatch=of-somebody-else"));
        Assert.Equal((0, ""), await SendAsync(there, sensor, "20.5"));
    }

    [Fact]
    public async Task Serve_WithAFolderForBackups_MakesOneAtItsFirstStartAndNoneAtTheNext()
    {
        var settings = new Dictionary<string, string> { ["FERMENTWATCH__BACKUP__FOLDER"] = Kept };
        for (int start = 0; start < 2; start++)
        {
            await using ServiceProcess service = await ServiceProcess.Start(Home, settings: settings).UpAsync();
            await Patience.UntilAsync(() => Directory.Exists(Kept)
                && Directory.GetDirectories(Kept).Any(each => !each.EndsWith(".draft", StringComparison.Ordinal)),
                "there is a backup");
            await service.StopAsync();
        }
        Assert.Equal(0, (await VerbAsync(Elsewhere, "restore", Assert.Single(Directory.GetDirectories(Kept)))).ExitCode);
    }

    [Fact]
    public async Task Restore_OfTheFolderOfBackups_NamesTheNewest()
    {
        await VerbAsync(Home, "sensor", "add", "cellar");
        await VerbAsync(Home, "backup", "--to", Kept);
        (int code, _, string error) = await VerbAsync(Elsewhere, "restore", Kept);
        Assert.Equal(2, code);
        Assert.Contains($"one of the backups in it; the newest is {Directory.GetDirectories(Kept)[0]}", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Backup_WithoutAFolder_SaysWhatToGive()
    {
        await VerbAsync(Home, "sensor", "add", "cellar");
        Assert.Equal((2, "", "to: Enter the folder for backups, or set Backup:Folder.\n"), await VerbAsync(Home, "backup"));
    }

    private static async Task<string> SignInAsync(ServiceProcess service, string password)
    {
        using var http = new HttpClient(new SocketsHttpHandler { UseCookies = false }) { BaseAddress = service.Web };
        http.DefaultRequestHeaders.Add("X-FermentWatch", "test");
        using HttpResponseMessage answer = await http.PostAsJsonAsync("/api/v1/sign-in", new { user = "Robin", password });
        answer.EnsureSuccessStatusCode();
        return answer.Headers.GetValues("Set-Cookie").First(value => value.StartsWith("fermentwatch=", StringComparison.Ordinal)).Split(';')[0];
    }

    private static async Task<HttpStatusCode> AskAsync(ServiceProcess service, string cookie)
    {
        using var http = new HttpClient(new SocketsHttpHandler { UseCookies = false }) { BaseAddress = service.Web };
        http.DefaultRequestHeaders.Add("Cookie", cookie);
        using HttpResponseMessage answer = await http.GetAsync(new Uri("/api/v1/sensors", UriKind.Relative));
        return answer.StatusCode;
    }

    private static Task<(int ExitCode, string Error)> SendAsync(ServiceProcess service, string sensor, string payload) =>
        Mosquitto.PublishAsync(service.MqttPort, Line(sensor, "user"), Line(sensor, "password"),
            $"fermentwatch/sensor/{Line(sensor, "user")}/temperature", payload);

    private static string Line(string output, string word) =>
        output.Split('\n').First(line => line.StartsWith(word, StringComparison.Ordinal))[word.Length..].Trim();

    private static async Task<(int ExitCode, string Output, string Error)> VerbAsync(string folder, params string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        int code = await FermentWatchCommand.RunAsync(args, new CommandContext
        {
            Output = output, Error = error, Clock = TimeProvider.System,
            Environment = new Dictionary<string, string> { ["FERMENTWATCH__STORAGE__FOLDER"] = folder },
        });
        return (code, output.ToString(), error.ToString());
    }
}
