using System.Globalization;
using FermentWatch.Intake.Embedded;
using FermentWatch.Service.Hosting;
using FermentWatch.Service.Loops;
using FermentWatch.Service.Settings;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.Time.Testing;
using NodaTime.Text;

// The product's composition root with a clock steered from standard input. Arguments: --folder DIR --start INSTANT
// [--settings FILE]. Commands, one a line: "to INSTANT" moves the clock there, with every timer on the way, lets every loop
// run and answers; "jump INSTANT" does it with no timer on the way, as on a machine that slept; "settle" lets every loop run;
// "stop" ends. Each answer is one line: "at INSTANT".
var given = new ConfigurationBuilder().AddCommandLine(args).Build();
var clock = new FakeTimeProvider(At(given["start"]!));

var settings = new ConfigurationBuilder();
if (given["settings"] is { } file)
    settings.AddJsonFile(Path.GetFullPath(file), optional: false);
settings.AddInMemoryCollection(new Dictionary<string, string?>
{
    ["Storage:Folder"] = Path.GetFullPath(given["folder"]!),
    ["Web:Port"] = given["web-port"] ?? "0",
    ["Mqtt:Port"] = given["mqtt-port"] ?? "0",
    // The clock stands still between commands, and a pace needs one that runs.
    ["Mqtt:MaxMessagesPerSecond"] = "0",
});
IConfigurationRoot configuration = settings.Build();
SettingsReading reading = ServiceSettings.Read(configuration);
if (reading.Errors.Count > 0)
{
    Console.Error.WriteLine(string.Join('\n', reading.Errors));
    return 2;
}

await using WebApplication app = FermentWatchApp.Build(reading.Settings, configuration, clock);
await app.StartAsync();
string web = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First();
int mqtt = app.Services.GetRequiredService<Broker>().Port ?? 0;
ServiceLoops loops = app.Services.GetRequiredService<ServiceLoops>();
await loops.SettleAsync(CancellationToken.None);
Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"listening web={web} mqtt={mqtt}"));

while (await Console.In.ReadLineAsync() is { } line && line != "stop")
{
    string[] words = line.Split(' ');
    if (words[0] == "to")
        clock.SetUtcNow(At(words[1]));
    else if (words[0] == "jump")
        clock.AdjustTime(At(words[1]));
    await loops.SettleAsync(CancellationToken.None);
    Console.WriteLine($"at {InstantPattern.ExtendedIso.Format(NodaTime.Instant.FromDateTimeOffset(clock.GetUtcNow()))}");
}
await app.StopAsync();
return 0;

static DateTimeOffset At(string instant) => InstantPattern.ExtendedIso.Parse(instant).GetValueOrThrow().ToDateTimeOffset();
