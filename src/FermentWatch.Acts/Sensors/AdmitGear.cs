using FermentWatch.Acts.Households;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Topics;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Sensors;

/// <summary>Lets gear speak to our broker: adds sensors and gateways, keeps and removes the credentials of gateways.</summary>
public sealed class AdmitGear(ISensorBook sensors, IPlaceBook places, IMemberBook members, ICredentialIssuer issuer, TimeProvider clock)
{
    /// <summary>Adds a sensor or gateway, or tells what was wrong.</summary>
    public async Task<(AddedSensor? Added, IReadOnlyList<Refusal> Refusals)> AddAsync(AddInput input, CancellationToken cancellationToken)
    {
        string name = input.Name.Trim();
        if (WrongName(input.Name) is { } wrong)
            return (null, [wrong]);
        string slug = SlugOf.Name(name)!;
        if (await sensors.CredentialAsync(slug, cancellationToken) is not null || await sensors.FindAsync(slug, cancellationToken) is not null)
            return (null, [new Refusal("name", slug, "there is a sensor or gateway of that name already: another name would be right")]);
        return input.Gateway is null
            ? await AddSensorAsync(name, slug, input, cancellationToken)
            : await AddGatewayAsync(slug, input, cancellationToken);
    }

    /// <summary>What is wrong with a name as the name of gear; null where nothing is.</summary>
    internal static Refusal? WrongName(string? typed)
    {
        string name = (typed ?? "").Trim();
        return name.Length <= SafeText.LongestName && !SafeText.HasHiddenSigns(name) && SlugOf.Name(name) is not null ? null
            : new Refusal("name", name.Length == 0 ? "nothing" : name,
                $"a name of 1 to {SafeText.LongestName} letters, one of a to z or a digit among them, would be right, such as 'cellar shelf'");
    }

    /// <summary>The credentials of gateways and buttons, each with whether the one who made it has left.</summary>
    public async Task<IReadOnlyList<KnownGateway>> GatewaysAsync(CancellationToken cancellationToken)
    {
        IReadOnlyList<Member> known = await members.AllAsync(cancellationToken);
        return [.. (await sensors.GatewaysAsync(cancellationToken)).Select(gateway =>
            new KnownGateway(gateway, Member.IsOrphan(gateway.MadeBy, gateway.MadeById, known)))];
    }

    /// <summary>Keeps the credential of a gateway that somebody made who has left, as one's own.</summary>
    public Task KeepGatewayAsync(string user, Person by, CancellationToken cancellationToken) =>
        sensors.KeepGatewayAsync(user, by, cancellationToken);

    /// <summary>Takes a gateway's credential away; what it published stays. False if there is none of that name.</summary>
    public Task<bool> RemoveGatewayAsync(string user, CancellationToken cancellationToken) => sensors.RemoveGatewayAsync(user, cancellationToken);

    /// <summary>Takes the sensor or gateway of this name away. What of the two it was, or what was wrong.</summary>
    public async Task<(Sensor? Sensor, Refusal? Refusal)> RemoveAsync(string user, CancellationToken cancellationToken)
    {
        if (await RemoveGatewayAsync(user, cancellationToken))
            return (null, null);
        if (await sensors.FindAsync(user, cancellationToken) is not { } sensor)
            return (null, await UnknownAsync(user, cancellationToken));
        await RemoveAsync(sensor, cancellationToken);
        return (sensor, null);
    }

    /// <summary>Takes a sensor out of service and its credential away; its readings stay.</summary>
    public Task RemoveAsync(Sensor sensor, CancellationToken cancellationToken) =>
        sensors.RemoveAsync(sensor.Id, clock.GetUtcNow().ToInstant(), cancellationToken);

    private async Task<Refusal> UnknownAsync(string user, CancellationToken cancellationToken)
    {
        string[] known =
        [
            .. (await sensors.AllAsync(cancellationToken)).Where(sensor => sensor.RemovedAt is null).Select(sensor => sensor.Slug),
            .. (await sensors.GatewaysAsync(cancellationToken)).Select(gateway => gateway.User),
        ];
        string right = NearestName.Of(user, known) is { } nearest ? $"did you mean {nearest}?"
            : known.Length > 0 ? $"one of {string.Join(", ", known)} would be right" : "there is no sensor in service";
        return new Refusal("user", user, right);
    }

    private async Task<(AddedSensor?, IReadOnlyList<Refusal>)> AddGatewayAsync(string slug, AddInput input, CancellationToken cancellationToken)
    {
        if (TopicFilter.WhatIsWrong(input.Gateway!) is { } wrong)
            return (null, [new Refusal("gateway", input.Gateway!, wrong)]);
        if (input.Place is not null)
            return (null, [new Refusal("place", input.Place, "a gateway stands nowhere: give its sensors a place instead")]);
        IssuedCredential issued = issuer.ForGateway(slug, input.Gateway!, input.By);
        await sensors.AddGatewayAsync(issued.Credential, cancellationToken);
        return (new AddedSensor(null, issued), []);
    }

    private async Task<(AddedSensor?, IReadOnlyList<Refusal>)> AddSensorAsync(string name, string slug, AddInput input,
        CancellationToken cancellationToken)
    {
        string? placeName = input.Place;
        Instant now = clock.GetUtcNow().ToInstant();
        IReadOnlyList<Place> known = placeName is null ? [] : await new ReadyPlaces(places, clock).MakeAsync(cancellationToken);
        Place? place = known.FirstOrDefault(each => each.Name.Equals(placeName?.Trim(), StringComparison.OrdinalIgnoreCase));
        if (placeName is not null && place is null)
        {
            string[] names = [.. known.Select(each => each.Name)];
            string right = NearestName.Of(placeName, names) is { } nearest ? $"did you mean '{nearest}'?"
                : $"one of {string.Join(", ", names)} would be right";
            return (null, [new Refusal("place", placeName, right)]);
        }
        var sensor = new Sensor { Id = input.Id ?? Guid.CreateVersion7(now.ToDateTimeOffset()), Slug = slug, Name = name, AddedAt = now };
        if (place is not null)
            sensor.Placements.Add(new SensorPlacement { Id = Guid.CreateVersion7(now.ToDateTimeOffset()), SensorId = sensor.Id, PlaceId = place.Id,
                From = now });
        IssuedCredential issued = issuer.ForSensor(sensor);
        return (new AddedSensor(await sensors.AddAsync(sensor, issued.Credential, cancellationToken), issued), []);
    }
}

/// <summary>A gateway, or buttons by the jars.</summary>
/// <param name="Credential">Who it is at the broker.</param>
/// <param name="IsOrphan">Whether an adult should keep or remove it: who made it is none of this household any more.</param>
public sealed record KnownGateway(MqttCredential Credential, bool IsOrphan);

/// <summary>A sensor or gateway to be added, as it was typed.</summary>
/// <param name="Name">What the household calls it.</param>
/// <param name="Place">Name of the place it stands in.</param>
/// <param name="Gateway">Topic filter of a gateway; null for a sensor.</param>
/// <param name="By">Who of the household adds it; null on the command line.</param>
/// <param name="Id">Of the form in which a sensor was typed, so that it is added once; null on the command line.</param>
public sealed record AddInput(string Name, string? Place, string? Gateway, Person? By = null, Guid? Id = null);

/// <summary>The form that adds a gateway or buttons, by the page and the API.</summary>
public sealed class GatewayForm
{
    /// <summary>What the household calls it.</summary>
    public string? Name { get; set; }

    /// <summary>The topic filter under which it may publish; buttons by the jars unless it says otherwise.</summary>
    public string? Filter { get; set; } = OwnTopics.JarButtons;

    /// <summary>What the desk takes. An empty filter is none at all, and never a sensor.</summary>
    internal AddInput ToInput(Person by) => new(Name ?? "", null, Filter?.Trim() ?? "", by);
}

/// <summary>A sensor or gateway that was added, with the password that can be shown now and never again.</summary>
/// <param name="Sensor">The sensor; null for a gateway.</param>
/// <param name="Issued">Its credential and password.</param>
public sealed record AddedSensor(Sensor? Sensor, IssuedCredential Issued);
