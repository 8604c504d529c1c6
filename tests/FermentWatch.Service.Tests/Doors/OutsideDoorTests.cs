using System.Globalization;
using System.Text.Json;
using FermentWatch.Intake.Embedded;
using FermentWatch.Intake.Outside;
using FermentWatch.Intake.Tests;
using FermentWatch.Intake.Tests.Peers;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.RunningTests;
using FermentWatch.Service.Tests.Api;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace FermentWatch.Service.Tests.Doors;

/// <summary>The product beside a broker that the household has already.</summary>
public class OutsideDoorTests
{
    [Fact]
    public async Task Start_OutsideBrokerIsAbsent_StartsAndSaysWhy()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync(("OutsideBroker:Host", "127.0.0.1"), ("OutsideBroker:Port", "9"));
        var link = kitchen.Services.GetRequiredService<OutsideLink>();
        await Eventually.TrueAsync(() => link.Problem?.Contains("refused", StringComparison.Ordinal) == true, $"it says why, not {link.Problem}");
        using Script script = await Script.SignedInAsync(kitchen);
        Assert.Equal(System.Net.HttpStatusCode.OK, (await script.Http.GetAsync("/sensors")).StatusCode);
    }

    [Fact]
    public async Task BothDoors_ReadingThroughEach_AreStoredAndTheStateGoesOutOnBoth()
    {
        await using Mosquitto outside = await Mosquitto.StartAsync();
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync([("Mqtt:Enabled", "true"), ("Mqtt:Port", "0"), .. At(outside)]);
        (Sensor sensor, string password) = await AddSensorAsync(kitchen);
        await kitchen.Services.GetRequiredService<ISourceRuleBook>().AddAsync(
            new SourceRule
            {
                Id = Guid.CreateVersion7(), TopicFilter = "hub/{device}/state", Payload = SourcePayload.Json, Quantity = Quantity.Humidity,
                ValuePointer = "/humidity", Unit = "%RH",
            }, default);
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync();
        await ConnectedAsync(kitchen);
        await using Listener hub = await Listener.AtAsync(outside.Port);
        await using Listener device = await Listener.AtAsync(kitchen.Services.GetRequiredService<Broker>().Port!.Value, sensor.Slug, password);

        await device.SayAsync("fermentwatch/sensor/shelf/temperature", "19.5");
        // The link looks for new rules every ten seconds of its clock.
        await Eventually.TrueAsync(async () =>
        {
            kitchen.Clock.Advance(TimeSpan.FromSeconds(11));
            await hub.SayAsync("hub/shelf/state", "{\"humidity\": 61}");
            return (await LastAsync(kitchen, sensor)).Count == 2;
        }, "both readings are stored");

        Assert.Equal([(Quantity.Temperature, 19.5), (Quantity.Humidity, 61.0)], await LastAsync(kitchen, sensor));
        Assert.Equal(sensor.Id, Assert.Single(await kitchen.Services.GetRequiredService<ISourceRuleBook>().FeedsAsync(default)).SensorId);
        await Eventually.TrueAsync(() => hub.Heard.ContainsKey("fermentwatch/jar/1/state"), "the jar's state is on the outside broker");
        Assert.Equal("online", hub.Heard["fermentwatch/service/status"]);
    }

    [Fact]
    public async Task Notice_ToATopicOfTheOutsideBroker_IsHeardThereWithItsKey()
    {
        await using Mosquitto outside = await Mosquitto.StartAsync();
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync(At(outside));
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync();
        await script.PostAsync("/api/v1/notice-routes", new { person = "Mira", channel = "Mqtt", address = "kitchen/notices" });
        await ConnectedAsync(kitchen);
        await using Listener tablet = await Listener.AtAsync(outside.Port);

        LocalDate tomorrow = kitchen.Now.InUtc().Date.PlusDays(1);
        kitchen.Clock.SetUtcNow((tomorrow + new LocalTime(7, 0)).InUtc().ToDateTimeOffset());
        await kitchen.SettleAsync();
        await Eventually.TrueAsync(() => tablet.Heard.ContainsKey("kitchen/notices"), "the round is heard at the outside broker");
        JsonElement notice = JsonDocument.Parse(tablet.Heard["kitchen/notices"]).RootElement;
        Assert.StartsWith($"round/{tomorrow:uuuu-MM-dd}/Mira/", notice.GetProperty("key").GetString(), StringComparison.Ordinal);
        Notice told = Assert.Single(await kitchen.Services.GetRequiredService<INoticeBook>().LatestAsync(10, default));
        Assert.Equal((NoticeState.Delivered, 1), (told.State, told.Attempts));
    }

    [Fact]
    public async Task Announcements_SwitchedOnAndOff_AreRetainedAndThenTakenBack()
    {
        await using Mosquitto outside = await Mosquitto.StartAsync();
        DirectoryInfo folder = Directory.CreateTempSubdirectory("fermentwatch-hub-");
        (string, string)[] settings = [("Storage:Folder", folder.FullName), .. At(outside)];
        try
        {
            await using (RunningKitchen on = await RunningKitchen.StartAsync([("HomeHub:Enabled", "true"), .. settings]))
            {
                using Script script = await Script.SignedInAsync(on);
                await script.PutUpAsync(("packed_at", on.Clock.GetUtcNow().AddDays(-4).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)));
                await ConnectedAsync(on);
                await Eventually.TrueAsync(async () => (await AnnouncedAsync(outside)).Count == 5, "the jar is announced");
                Dictionary<string, string> told = await AnnouncedAsync(outside);
                JsonElement ph = JsonDocument.Parse(told["homeassistant/sensor/fermentwatch/jar_1_expected_ph/config"]).RootElement;
                Assert.Equal(
                    ("fermentwatch/jar/1/state", "{{ value_json.expectedPhP50 | default('None') }}", "fermentwatch_jar_1_expected_ph"),
                    (ph.GetProperty("state_topic").GetString(), ph.GetProperty("value_template").GetString(), ph.GetProperty("unique_id")
                        .GetString()));
                // What the template names is what the state holds.
                await using Listener listener = await Listener.AtAsync(outside.Port);
                await Eventually.TrueAsync(
                    () => listener.Heard.TryGetValue("fermentwatch/jar/1/state", out string? state)
                        && JsonDocument.Parse(state).RootElement.TryGetProperty("expectedPhP50", out _), "the state has an expected pH");
            }
            await using RunningKitchen off = await RunningKitchen.StartAsync(settings);
            await Eventually.TrueAsync(async () => (await AnnouncedAsync(outside)).Count == 0, "all of it is taken back");
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static (string, string)[] At(Mosquitto broker) =>
        [("OutsideBroker:Host", "127.0.0.1"), ("OutsideBroker:Port", broker.Port.ToString(CultureInfo.InvariantCulture))];

    private static Task ConnectedAsync(RunningKitchen kitchen)
    {
        var link = kitchen.Services.GetRequiredService<OutsideLink>();
        return Eventually.TrueAsync(() => link.IsConnected, "the link is connected");
    }

    private static async Task<Dictionary<string, string>> AnnouncedAsync(Mosquitto broker)
    {
        await using Listener listener = await Listener.AtAsync(broker.Port);
        // The broker sends what it retained before it answers anything later.
        await listener.SayAsync("mark", "x");
        await Eventually.TrueAsync(() => listener.Heard.ContainsKey("mark"), "the mark is heard");
        return listener.Heard.Where(heard => heard.Key.StartsWith("homeassistant/", StringComparison.Ordinal)).ToDictionary();
    }

    private static async Task<List<(Quantity, double)>> LastAsync(RunningKitchen kitchen, Sensor sensor) =>
        [.. (await kitchen.Services.GetRequiredService<IReadingLog>().LastAsync(sensor.Key, default))
            .Select(last => (last.Reading.Quantity, last.Reading.Value)).OrderBy(last => last.Quantity)];

    private static async Task<(Sensor Sensor, string Password)> AddSensorAsync(RunningKitchen kitchen)
    {
        var sensor = new Sensor { Id = Guid.CreateVersion7(), Slug = "shelf", Name = "shelf", AddedAt = Instant.FromUtc(2026, 9, 1, 0, 0) };
        var issued = new FermentWatch.Intake.Credentials.CredentialIssuer().ForSensor(sensor);
        return (await kitchen.Services.GetRequiredService<ISensorBook>().AddAsync(sensor, issued.Credential, default), issued.Password);
    }
}
