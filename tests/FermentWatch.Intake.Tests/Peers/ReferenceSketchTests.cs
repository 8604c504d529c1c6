using System.Diagnostics;
using FermentWatch.Intake.Tests.Cases;

namespace FermentWatch.Intake.Tests.Peers;

/// <summary>The payload code of the reference sketch, compiled on this machine, makes the golden payloads byte for byte.</summary>
public sealed class ReferenceSketchTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fermentwatch-sketch-");

    public void Dispose() => _folder.Delete(true);

    [Fact]
    public async Task Payloads_OfEverySketchCase_AreWhatTheSketchSends()
    {
        string sketch = CaseFolder.Find("firmware-notes/reference-sketch");
        string program = Path.Combine(_folder.FullName, "golden_payload");
        var (compiled, errors) = await RunAsync(
            "g++", "-std=c++11", "-Wall", "-Wextra", "-Werror", "-pedantic",
            Path.Combine(sketch, "payload.cpp"), Path.Combine(sketch, "host", "golden_payload.cpp"), "-o", program);
        Assert.True(compiled.Length == 0 && errors.Length == 0, errors);

        string[] cases = [.. Directory.GetDirectories(CaseFolder.Root, "sketch-*").Select(folder => Path.GetFileName(folder)!)];
        Assert.NotEmpty(cases);
        foreach (string name in cases)
        {
            var (payload, error) = await RunAsync(program, name);
            Assert.True(error.Length == 0, $"{name}: {error}");
            Assert.Equal(await File.ReadAllTextAsync(Path.Combine(CaseFolder.Root, name, "payload")), payload);
        }
    }

    private static async Task<(string Output, string Error)> RunAsync(string program, params string[] arguments)
    {
        using Process process =
            Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(10));
        return (output, await error);
    }
}
