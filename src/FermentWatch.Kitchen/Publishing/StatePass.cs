using System.Globalization;
using System.Text.Json;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Topics;
using NodaTime;

namespace FermentWatch.Kitchen.Publishing;

/// <summary>Publishes what has changed: the state of each kept jar and today's round, retained, so that who comes later gets it too.</summary>
public sealed class StatePass(
    IHouseholdBook households, IJarBook jars, IPlaceBook places, IForecastBook forecasts, RoundPass rounds, IMessageOutlet outlet,
    SetAside setAside)
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        DefaultIgnoreCondition = System.Text.Json.Serialization.JsonIgnoreCondition.WhenWritingNull,
    };

    private readonly Dictionary<string, string> _published = [];

    private volatile bool _all;

    /// <summary>Has the next pass publish everything, because a broker is there that may know nothing of it.</summary>
    public void SayAllAgain() => _all = true;

    /// <summary>Publishes what differs from what was published last.</summary>
    public async Task RunAsync(Instant now, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        var placeNames = (await places.AllAsync(cancellationToken)).ToDictionary(place => place.Id, place => place.Name);
        var latest = (await forecasts.LatestAsync(cancellationToken)).ToDictionary(forecast => forecast.JarId);
        var topics = new Dictionary<string, string>();
        using SetAside.SetAsideRun run = setAside.Begin("state");
        foreach (Jar jar in await jars.KeptAsync(cancellationToken))
            run.Try(string.Create(CultureInfo.InvariantCulture, $"jar {jar.Number}"), () =>
            {
                JarState state = JarState.Of(jar, placeNames[jar.PlacementAt(now).PlaceId], latest.GetValueOrDefault(jar.Id), household.Zone, now);
                topics[OwnTopics.JarState(jar.Number)] = JsonSerializer.Serialize(state, Json);
            });
        await run.TryAsync("today's round", async () => topics[OwnTopics.RoundToday] = await RoundAsync(household, now, cancellationToken));
        bool all = _all;
        _all = false;
        foreach (string gone in _published.Keys.Except(topics.Keys).ToList())
            await PublishAsync(gone, "", cancellationToken);
        foreach ((string topic, string payload) in topics)
            if (all || _published.GetValueOrDefault(topic) != payload)
                await PublishAsync(topic, payload, cancellationToken);
    }

    private async Task PublishAsync(string topic, string payload, CancellationToken cancellationToken)
    {
        // A broker that cannot be reached hears all of it when it can again.
        await outlet.PublishAsync(topic, System.Text.Encoding.UTF8.GetBytes(payload), retain: true, cancellationToken);
        if (payload.Length == 0)
            _published.Remove(topic);
        else
            _published[topic] = payload;
    }

    private async Task<string> RoundAsync(Household household, Instant now, CancellationToken cancellationToken)
    {
        RoundSheet sheet = await rounds.SheetAsync(household, now.InZone(household.Zone).Date, cancellationToken);
        return JsonSerializer.Serialize(new
        {
            v = 1,
            date = sheet.Date.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture),
            title = RoundWords.Title(sheet),
            text = RoundWords.Body(sheet),
            jars = sheet.Jars.Select(each => each.Jar.Number),
            notLookedAt = sheet.Jars.Where(each => !each.LookedAtToday).Select(each => each.Jar.Number),
        }, Json);
    }
}
