using FermentWatch.Acts.Members;
using FermentWatch.Intake.Credentials;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Service.Demo.Household;

/// <summary>Writes the invented household into empty records, by the rules by which a real one enters things.</summary>
internal sealed class HouseholdMaker(
    IHouseholdBook households, IPlaceBook places, ISensorBook sensors, IJarBook jars, ManageMembers members)
{
    /// <summary>How far back sensors have reported.</summary>
    private static readonly Duration History = Duration.FromDays(36);

    private Dictionary<string, Place> _places = [];

    /// <summary>Makes everything.</summary>
    /// <param name="now">When the demo begins.</param>
    /// <param name="zone">The household's zone.</param>
    /// <param name="cancellationToken">Gives up.</param>
    public async Task<MadeHousehold> MakeAsync(Instant now, DateTimeZone zone, CancellationToken cancellationToken)
    {
        Kitchen.Households.Household household = await households.ReadAsync(cancellationToken);
        household.Name = NumberNine.Name;
        household.TimeZoneId = zone.Id;
        await households.WriteAsync(household, cancellationToken);
        string password = await MakePeopleAsync();
        await MakePlacesAsync(now, cancellationToken);
        var courses = new Dictionary<string, (Jar Jar, ExpectedCourse Course)>();
        foreach (InventedLot lot in NumberNine.Lots)
        {
            Jar first = (await PutUpAsync(lot, household, now, cancellationToken))[0];
            courses.Add(first.Name, (first, await LiveThroughAsync(first, lot, now, zone, cancellationToken)));
        }
        var made = new List<MadeSensor>();
        foreach (InventedSensor sensor in NumberNine.Sensors)
            made.Add(await MakeSensorAsync(sensor, courses, now, zone, cancellationToken));
        return new MadeHousehold(password, made);
    }

    private async Task<string> MakePeopleAsync()
    {
        string? first = null;
        foreach ((string name, MemberRole role) in NumberNine.People)
        {
            string password = SensorPassword.Generate();
            if (await members.AddAsync(name, role, password) is { Count: > 0 } refusals)
                throw new InvalidOperationException($"The demo's own people are refused: {string.Join("; ", refusals)}");
            first ??= password;
        }
        return first!;
    }

    private async Task MakePlacesAsync(Instant now, CancellationToken cancellationToken)
    {
        foreach ((int order, InventedRoom room) in NumberNine.Rooms.Index())
            await places.AddAsync(new Place { Id = NewId(now), Name = room.Name, ShelfOrder = order + 1, Typical = room.Typical },
                cancellationToken);
        _places = (await places.AllAsync(cancellationToken)).ToDictionary(place => place.Name);
    }

    private async Task<IReadOnlyList<Jar>> PutUpAsync(InventedLot lot, Kitchen.Households.Household household, Instant now,
        CancellationToken cancellationToken)
    {
        Instant packedAt = now - Duration.FromDays(lot.DaysAgo);
        PutUpForm form = lot.Form with { PackedAt = packedAt.InZone(household.Zone).ToString("uuuu-MM-dd'T'HH:mm", null) };
        PutUpOrder order = PutUp.Read(form, household, [.. _places.Values], now);
        if (order.Refusals.Count > 0)
            throw new InvalidOperationException($"The demo's own jar '{form.Name}' is refused: {string.Join("; ", order.Refusals)}");
        return await jars.AddAsync(order.Jars, cancellationToken);
    }

    /// <summary>Does with the first jar of a lot what was done with it, in order.</summary>
    private async Task<ExpectedCourse> LiveThroughAsync(Jar jar, InventedLot lot, Instant now, DateTimeZone zone,
        CancellationToken cancellationToken)
    {
        foreach (InventedAct act in lot.Acts.Where(act => act.MovedTo is not null))
        {
            var move = new JarPlacement { Id = NewId(now), JarId = jar.Id, PlaceId = _places[act.MovedTo!].Id,
                From = jar.PackedAt + Duration.FromDays(act.Day) };
            await jars.MoveAsync(move, cancellationToken);
            jar.Placements.Add(move);
        }
        Dictionary<Guid, InventedRoom> rooms = NumberNine.Rooms.ToDictionary(room => _places[room.Name].Id);
        ExpectedCourse course = ExpectedCourse.Of(jar, at => rooms[jar.PlacementAt(at).PlaceId].CelsiusAt(at, now, zone), now);
        foreach (InventedAct act in lot.Acts)
        {
            Instant at = jar.PackedAt + Duration.FromDays(act.Day);
            var moment = new ActMoment(jar, at, act.By, new Answering(NewId(at), new Person(act.By), at, zone, MemberRole.Adult), course.PhAt(at));
            Observation[] seen = [.. act.Do(moment)];
            jar.Observations.AddRange(seen);
            await jars.ObserveAsync(seen, cancellationToken);
        }
        return course;
    }

    private async Task<MadeSensor> MakeSensorAsync(
        InventedSensor invented, Dictionary<string, (Jar Jar, ExpectedCourse Course)> courses, Instant now, DateTimeZone zone,
            CancellationToken cancellationToken)
    {
        (Jar Jar, ExpectedCourse Course)? probed = invented.InJar is null ? null : courses[invented.InJar];
        Instant since = probed?.Jar.PackedAt ?? now - History;
        var sensor = new Sensor { Id = NewId(since), Slug = invented.Slug, Name = invented.Name, AddedAt = since };
        sensor.Placements.Add(new SensorPlacement
        {
            Id = NewId(since), SensorId = sensor.Id, From = since, JarId = probed?.Jar.Id, PlaceId = probed is null ? _places[invented.Room].Id
                : null,
        });
        IssuedCredential issued = CredentialIssuer.ForSensor(sensor);
        await sensors.AddAsync(sensor, issued.Credential, cancellationToken);
        InventedRoom room = NumberNine.Rooms.First(room => room.Name == invented.Room);
        return new MadeSensor(invented, issued.Password, since, at => room.CelsiusAt(at, now, zone), probed is { } jar ? jar.Course.PhAt : null);
    }

    private static Guid NewId(Instant at) => Guid.CreateVersion7(at.ToDateTimeOffset());
}

/// <summary>The household as it was made for this run.</summary>
/// <param name="OwnerPassword">The password of the one who signs in first.</param>
/// <param name="Sensors">Its sensors.</param>
internal sealed record MadeHousehold(string OwnerPassword, IReadOnlyList<MadeSensor> Sensors);

/// <summary>A sensor that was added to the records, with what it needs to report.</summary>
/// <param name="Invented">The sensor.</param>
/// <param name="Password">The password of its credential.</param>
/// <param name="Since">Since when it has reported.</param>
/// <param name="CelsiusAt">What it would measure at an instant, Celsius.</param>
/// <param name="PhAt">The pH it would measure; null if it has no electrode.</param>
internal sealed record MadeSensor(
    InventedSensor Invented, string Password, Instant Since, Func<Instant, double> CelsiusAt, Func<Instant, double>? PhAt);
