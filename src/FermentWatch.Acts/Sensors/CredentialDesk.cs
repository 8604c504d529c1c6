using FermentWatch.Acts.Households;
using FermentWatch.Intake.Credentials;
using FermentWatch.Intake.Topics;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Topics;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Sensors;

/// <summary>Where sensors and gateways are added to the records.</summary>
internal sealed class CredentialDesk(ISensorBook sensors, IPlaceBook places, TimeProvider clock)
{
    /// <summary>Adds a sensor or gateway, or tells what was wrong.</summary>
    public async Task<(AddedSensor? Added, IReadOnlyList<Refusal> Refusals)> AddAsync(AddInput input, CancellationToken cancellationToken)
    {
        string name = input.Name.Trim();
        if (name.Length > SafeText.LongestName || SafeText.HasHiddenSigns(name) || SlugOf.Name(name) is not { } slug)
            return (null, [new Refusal("name", input.Name, $"a name of 1 to {SafeText.LongestName} letters, one of a to z or a digit among them, would be right, such as 'cellar shelf'")]);
        if (await sensors.CredentialAsync(slug, cancellationToken) is not null)
            return (null, [new Refusal("name", slug, "there is a sensor or gateway of that name already: another name would be right")]);
        return input.Gateway is null
            ? await AddSensorAsync(name, slug, input.Place, cancellationToken)
            : await AddGatewayAsync(slug, input, cancellationToken);
    }

    private async Task<(AddedSensor?, IReadOnlyList<Refusal>)> AddGatewayAsync(string slug, AddInput input, CancellationToken cancellationToken)
    {
        if (TopicFilter.WhatIsWrong(input.Gateway!) is { } wrong)
            return (null, [new Refusal("gateway", input.Gateway!, wrong)]);
        if (input.Place is not null)
            return (null, [new Refusal("place", input.Place, "a gateway stands nowhere: give its sensors a place instead")]);
        IssuedCredential issued = CredentialIssuer.ForGateway(slug, input.Gateway!, input.By);
        await sensors.AddGatewayAsync(issued.Credential, cancellationToken);
        return (new AddedSensor(null, issued), []);
    }

    private async Task<(AddedSensor?, IReadOnlyList<Refusal>)> AddSensorAsync(string name, string slug, string? placeName, CancellationToken cancellationToken)
    {
        Instant now = clock.GetUtcNow().ToInstant();
        IReadOnlyList<Place> known = placeName is null ? [] : await new ReadyPlaces(places, clock).MakeAsync(cancellationToken);
        Place? place = known.FirstOrDefault(each => each.Name.Equals(placeName?.Trim(), StringComparison.OrdinalIgnoreCase));
        if (placeName is not null && place is null)
        {
            string[] names = [.. known.Select(each => each.Name)];
            string right = NearestName.Of(placeName, names) is { } nearest ? $"did you mean '{nearest}'?" : $"one of {string.Join(", ", names)} would be right";
            return (null, [new Refusal("place", placeName, right)]);
        }
        var sensor = new Sensor { Id = Guid.CreateVersion7(now.ToDateTimeOffset()), Slug = slug, Name = name, AddedAt = now };
        if (place is not null)
            sensor.Placements.Add(new SensorPlacement { Id = Guid.CreateVersion7(now.ToDateTimeOffset()), SensorId = sensor.Id, PlaceId = place.Id, From = now });
        IssuedCredential issued = CredentialIssuer.ForSensor(sensor);
        return (new AddedSensor(await sensors.AddAsync(sensor, issued.Credential, cancellationToken), issued), []);
    }
}
