using System.Diagnostics;
using System.Globalization;
using FermentWatch.Intake.Tests;
using FermentWatch.TestKit;

namespace FermentWatch.Faults.Tests.Unit;

/// <summary>The product under the filter of the unit that we ship, loaded into the kernel as a service manager does.</summary>
public sealed class UnitFilterTests : IDisposable
{
    private static readonly string _service = Path.Combine(AppContext.BaseDirectory, "FermentWatch.Service.dll");

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fermentwatch-unit-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public async Task Unit_ItsFilterLoaded_ChecksServesAndStops()
    {
        string launcher = await LauncherAsync();
        SortedSet<string> allowed = await UnitFilter.AllowedAsync(await UnitAsync());
        Assert.DoesNotContain("mount", allowed);
        (int checkedWith, string said) = await RunAsync(launcher, allowed, "check");
        Assert.True(checkedWith == 0, said);

        int web = ServiceProcess.FreePort();
        using Process serving = Start(launcher, allowed, "serve", web, ServiceProcess.FreePort());
        using var http = new HttpClient { BaseAddress = new Uri($"http://127.0.0.1:{web}"), Timeout = TimeSpan.FromSeconds(5) };
        await Eventually.TrueAsync(() => serving.HasExited || Answers(http), "the service is up under the filter", 180);
        (int healthy, string health) = await RunAsync(launcher, allowed, "healthcheck", web);
        Assert.True(healthy == 0, health);
        await UnitFilter.OutputOfAsync("/bin/kill", "-TERM", serving.Id.ToString(CultureInfo.InvariantCulture));
        await serving.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(3));
        Assert.Equal(0, serving.ExitCode);
    }

    /// <summary>That the test can fail: the line as it stood before, under which the runtime does not start.</summary>
    [Fact]
    public async Task Unit_WithoutTheCallOfTheRuntime_DoesNotStart()
    {
        string before = string.Join('\n', (await UnitAsync()).Split('\n').Where(line => line != "SystemCallFilter=sched_setaffinity"));
        (int ended, _) = await RunAsync(await LauncherAsync(), await UnitFilter.AllowedAsync(before), "check");
        Assert.NotEqual(0, ended);
    }

    private static bool Answers(HttpClient http)
    {
        try
        {
            return http.GetAsync("/healthz/live").GetAwaiter().GetResult().IsSuccessStatusCode;
        }
        catch (Exception trouble) when (trouble is HttpRequestException or TaskCanceledException)
        {
            return false;
        }
    }

    private static Task<string> UnitAsync()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "FermentWatch.sln")))
            folder = folder.Parent ?? throw new InvalidOperationException("FermentWatch.sln was not found above the tests.");
        return File.ReadAllTextAsync(Path.Combine(folder.FullName, "deploy", "fermentwatch.service"));
    }

    private async Task<string> LauncherAsync()
    {
        string launcher = Path.Combine(_folder.FullName, "filtered");
        await UnitFilter.OutputOfAsync("cc", "-o", launcher, Path.Combine(AppContext.BaseDirectory, "Unit", "filtered.c"), "-lseccomp");
        return launcher;
    }

    private async Task<(int ExitCode, string Said)> RunAsync(string launcher, IEnumerable<string> allowed, string verb, int web = 0)
    {
        using Process process = Start(launcher, allowed, verb, web, 0);
        Task<string> output = process.StandardOutput.ReadToEndAsync(), errors = process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(3));
        return (process.ExitCode, await output + await errors);
    }

    private Process Start(string launcher, IEnumerable<string> allowed, string verb, int web, int mqtt)
    {
        var info = new ProcessStartInfo(launcher, ["dotnet", _service, verb])
        {
            RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true,
        };
        info.Environment["DOTNET_EnableDiagnostics"] = "0";
        info.Environment["FERMENTWATCH__STORAGE__FOLDER"] = Path.Combine(_folder.FullName, "data");
        info.Environment["FERMENTWATCH__WEB__PORT"] = web.ToString(CultureInfo.InvariantCulture);
        info.Environment["FERMENTWATCH__MQTT__PORT"] = mqtt.ToString(CultureInfo.InvariantCulture);
        Process process = Process.Start(info)!;
        foreach (string call in allowed)
            process.StandardInput.WriteLine(call);
        process.StandardInput.Close();
        return process;
    }
}
