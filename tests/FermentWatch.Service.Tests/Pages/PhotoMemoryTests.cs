using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Text.RegularExpressions;
using Xunit.Abstractions;

namespace FermentWatch.Service.Tests.Pages;

/// <summary>What pictures cost the product, in a process of its own.</summary>
public sealed partial class PhotoMemoryTests(ITestOutputHelper output) : IDisposable
{
    private const int AtOnce = 8, MostMegabytes = 512;
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    private readonly string _folder = Directory.CreateTempSubdirectory("fermentwatch-photos-").FullName;
    private readonly int _port = FreePort();
    private readonly HttpClient _http = new(new SocketsHttpHandler { AllowAutoRedirect = false }) { Timeout = TimeSpan.FromMinutes(3) };

    public void Dispose()
    {
        _http.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task EightPicturesAtOnce_TheHeaviestThatAreTakenAndBombs_StayBelow512MegabytesWithTheService()
    {
        using Process adding = Start("member", "add", "Ada", "--stdin");
        await adding.StandardInput.WriteLineAsync("four wet cabbages");
        await adding.WaitForExitAsync().WaitAsync(Patience);
        using Process service = Start("serve");
        try
        {
            service.BeginOutputReadLine();
            _http.BaseAddress = new Uri($"http://127.0.0.1:{_port.ToString(CultureInfo.InvariantCulture)}");
            await UntilItLivesAsync(service);
            (string action, string token) = await PhotoFormAsync();
            long before = PeakMegabytes(service);
            byte[] heaviest = PngBomb.Of(3000, 3000, bits: 16, interlaced: true), bomb = PngBomb.Of(8944, 8944, bits: 1);
            HttpResponseMessage[] bombs = await Task.WhenAll(Enumerable.Range(0, AtOnce).Select(_ => SendAsync(action, token, bomb)));
            Assert.All(bombs, answer => Assert.Contains("photo=", answer.Headers.Location!.ToString(), StringComparison.Ordinal));
            HttpResponseMessage[] taken = await Task.WhenAll(Enumerable.Range(0, AtOnce).Select(_ => SendAsync(action, token, heaviest)));
            Assert.All(taken, answer => Assert.Equal("/jars/1", answer.Headers.Location!.ToString()));
            long after = PeakMegabytes(service);
            output.WriteLine($"resident at most: {before} MB before, {after} MB with {AtOnce} of {heaviest.Length >> 10} kB and {AtOnce} of "
                + $"{bomb.Length >> 10} kB at once");
            Assert.InRange(after, 1, MostMegabytes);
        }
        finally
        {
            service.Kill();
            await service.WaitForExitAsync().WaitAsync(Patience);
        }
    }

    private Process Start(params string[] arguments)
    {
        var info = new ProcessStartInfo("dotnet") { RedirectStandardInput = true, RedirectStandardOutput = true,
            WorkingDirectory = AppContext.BaseDirectory };
        foreach (string argument in (string[])[Path.Combine(AppContext.BaseDirectory, "FermentWatch.Service.dll"), .. arguments])
            info.ArgumentList.Add(argument);
        info.Environment["FERMENTWATCH__STORAGE__FOLDER"] = _folder;
        info.Environment["FERMENTWATCH__WEB__PORT"] = _port.ToString(CultureInfo.InvariantCulture);
        info.Environment["FERMENTWATCH__MQTT__ENABLED"] = "false";
        return Process.Start(info)!;
    }

    private async Task UntilItLivesAsync(Process service)
    {
        long start = Stopwatch.GetTimestamp();
        while (Stopwatch.GetElapsedTime(start) < Patience && !service.HasExited)
        {
            try
            {
                if ((await _http.GetAsync("/healthz/live")).IsSuccessStatusCode)
                    return;
            }
            catch (HttpRequestException)
            {
                await Task.Delay(TimeSpan.FromMilliseconds(50), TimeProvider.System);
            }
        }
        throw new InvalidOperationException("The service did not start.");
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    private async Task<(string Action, string Token)> PhotoFormAsync()
    {
        _http.DefaultRequestHeaders.Add("X-FermentWatch", "test");
        foreach ((string path, object body) in ((string, object)[])[
            ("/api/v1/sign-in", new { user = "Ada", password = "four wet cabbages" }),
            ("/api/v1/places", new { name = "cellar", typical = "Cellar" }),
            ("/api/v1/jars", new { what = "cabbage", how_much = "900g", salt = "2.25%", vessel = "1l", place = "cellar" }),
            ("/api/v1/round/today/seen", new { jar = 1, what = "Film" })])
        {
            HttpResponseMessage answer = await _http.PostAsJsonAsync(path, body);
            Assert.True(answer.IsSuccessStatusCode, $"{path}: {await answer.Content.ReadAsStringAsync()}");
        }
        string page = await _http.GetStringAsync("/jars/1");
        return ("/" + PhotoAction().Match(page).Groups[1].Value, Token().Match(page).Groups[1].Value);
    }

    private Task<HttpResponseMessage> SendAsync(string action, string token, byte[] picture)
    {
        var file = new ByteArrayContent(picture);
        file.Headers.ContentType = new MediaTypeHeaderValue("image/png");
        return _http.PostAsync(action,
            new MultipartFormDataContent { { new StringContent(token), "__RequestVerificationToken" }, { new StringContent("1"), "jar" },
            { file, "photo", "a.png" } });
    }

    private static long PeakMegabytes(Process process) => long.Parse(
        File.ReadLines($"/proc/{process.Id.ToString(CultureInfo.InvariantCulture)}/status")
            .First(line => line.StartsWith("VmHWM:", StringComparison.Ordinal))["VmHWM:".Length..^2].Trim(),
        CultureInfo.InvariantCulture) >> 10;

    [GeneratedRegex("action=\"/?(photos/[^\"]+)\"")]
    private static partial Regex PhotoAction();

    [GeneratedRegex("__RequestVerificationToken\" value=\"([^\"]+)\"")]
    private static partial Regex Token();
}
