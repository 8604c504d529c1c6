using System.Globalization;
using FermentWatch.Acts;
using FermentWatch.Acts.Households;
using FermentWatch.Acts.Jars;
using FermentWatch.Acts.Photos;
using FermentWatch.Acts.Sensors;
using FermentWatch.Intake.Credentials;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using NodaTime;

namespace FermentWatch.Service.Demo.Household;

/// <summary>
/// Has the invented household live through its days in empty records: day by day, by the acts and the rules by which a real one enters
/// things, and by a clock of its own.
/// </summary>
internal sealed class HouseholdMaker(
    HouseholdActs acts, HouseholdReader household, JarReader jars, KeepPhoto photos, ForecastPass forecasts, PastClock clock)
{
    /// <summary>How far back sensors have reported, and how far back the household goes: a year and an autumn.</summary>
    private static readonly Duration History = Duration.FromDays(36), Life = Duration.FromDays(400);

    private readonly Dictionary<string, (KnownAccount Account, string Password)> _people = [];
    private readonly Dictionary<string, (Jar Jar, ExpectedCourse Course)> _firstOfLots = [];
    private readonly List<MadeSensor> _sensors = [];
    private IReadOnlyList<Place> _places = [];

    /// <summary>For records that go by this clock.</summary>
    public static HouseholdMaker In(IServiceProvider records, PastClock clock) =>
        ActivatorUtilities.CreateInstance<HouseholdMaker>(records, ActivatorUtilities.CreateInstance<HouseholdActs>(records), clock);

    /// <summary>Makes everything.</summary>
    /// <param name="now">When the demo begins.</param>
    /// <param name="zone">The household's zone.</param>
    /// <param name="cancellationToken">Gives up between two acts.</param>
    public async Task<MadeHousehold> MakeAsync(Instant now, DateTimeZone zone, CancellationToken cancellationToken)
    {
        clock.Now = now - Life;
        await MoveInAsync(zone);
        foreach ((Instant at, Func<Task> act) in Days(now, zone).OrderBy(moment => moment.At))
        {
            cancellationToken.ThrowIfCancellationRequested();
            clock.Now = at;
            await act();
        }
        return new MadeHousehold(_people[NumberNine.Owner].Password, _sensors);
    }

    /// <summary>Household, people and places.</summary>
    private async Task MoveInAsync(DateTimeZone zone)
    {
        Took(NumberNine.Name, await acts.Household.DoAsync(new HouseholdInput
        {
            Name = NumberNine.Name, TimeZone = zone.Id, PhTool = nameof(PhTool.Meter), RoundAt = "07:00", EveningAt = "19:00",
        }, default));
        foreach ((string name, MemberRole role) in NumberNine.People)
        {
            string password = SensorPassword.Generate();
            Took(name, await acts.Members.AddAsync(name, role, password));
            _people.Add(name, ((await acts.Members.AllAsync(default)).First(account => account.Name == name), password));
        }
        foreach (InventedRoom room in NumberNine.Rooms)
            Took(room.Name, await acts.Place.DoAsync(new PlaceInput { Name = room.Name, Typical = room.Typical.ToString() }, default));
        _places = await household.PlacesAsync(default);
    }

    /// <summary>All that was done since, each with its moment.</summary>
    private IEnumerable<(Instant At, Func<Task> Act)> Days(Instant now, DateTimeZone zone)
    {
        foreach (InventedLot lot in NumberNine.Lots)
        {
            Instant packed = now - Duration.FromDays(lot.DaysAgo);
            yield return (packed, () => PutUpAsync(lot, now, zone));
            foreach (InventedAct act in lot.Acts)
                yield return (packed + Duration.FromDays(act.Day), () => DoAsync(lot, act));
        }
        foreach (InventedSensor sensor in NumberNine.Sensors)
            yield return (Since(sensor, now), () => AddAsync(sensor, now, zone));
        LocalDate today = now.InZone(zone).Date;
        foreach ((int daysAgo, string by) in NumberNine.Rounds)
            yield return (today.PlusDays(-daysAgo).At(NumberNine.RoundAt).InZoneLeniently(zone).ToInstant(), () => LookAroundAsync(by));
    }

    private async Task PutUpAsync(InventedLot lot, Instant now, DateTimeZone zone)
    {
        var answer = await acts.PutUp.DoAsync(lot.Form with { PackedAt = Typed(zone) }, Mark(NumberNine.Owner), default);
        Took(lot.Form.Name!, answer.Refusals);
        Jar first = answer.Jars[0];
        var rooms = NumberNine.Rooms.ToDictionary(room => room.Name);
        var course = ExpectedCourse.Of(first, at => rooms[lot.RoomOn((at - first.PackedAt).TotalDays)].CelsiusAt(at, now, zone),
            lot.IsEnded ? first.PackedAt + Duration.FromDays(lot.Acts[^1].Day) : now);
        _firstOfLots.Add(lot.Form.Name!, (first, course));
        // What was foretold on its first day; what came of it is entered later on, and looking back holds the two together.
        await forecasts.RenewAsync([first], clock.Now, default);
    }

    private async Task DoAsync(InventedLot lot, InventedAct act)
    {
        (Jar first, ExpectedCourse course) = _firstOfLots[lot.Form.Name!];
        Jar jar = (await jars.RecordAsync(first.Number, default))!;
        Took(lot.Form.Name!, await act.Do(new ActMoment(jar, Mark(act.By), acts, _places, course.PhAt(clock.Now))));
        if (act.Photo is { } shows)
            await TakePhotoAsync(first.Number, act, shows);
    }

    private async Task TakePhotoAsync(int number, InventedAct act, SightingKind shows)
    {
        Jar jar = (await jars.RecordAsync(number, default))!;
        byte[] drawn = DrawnJar.Photo(jar, NumberNine.ColoursOf(jar.Portions[0].Produce), act.Day, shows);
        await photos.DoAsync(jar.Standing.Last().Id, drawn, Mark(act.By).Who, mayReplaceAny: true, default);
    }

    /// <summary>A morning's round: all well wherever nothing is being watched closely; the shed is forgotten.</summary>
    private async Task LookAroundAsync(string by)
    {
        var sheet = (await acts.Rounds.TodayAsync(default)).Sheet;
        var well = sheet.Shelves.Where(shelf => shelf.Place.Name != NumberNine.ForgottenRoom).SelectMany(shelf => shelf.Jars)
            .Where(each => each.Trouble is null).ToList();
        var opened = well.Where(each => each.Opening).Select(each => each.Jar.Number).ToHashSet();
        await acts.AllWell.DoAsync(well.Select(each => each.Jar.Number).ToHashSet(), opened, Mark(by), default);
    }

    private async Task AddAsync(InventedSensor sensor, Instant now, DateTimeZone zone)
    {
        var (added, refusals) = await acts.Gear.AddAsync(new AddInput(sensor.Name, sensor.InJar is null ? sensor.Room : null, null), default);
        Took(sensor.Name, refusals);
        Func<Instant, double>? phAt = null;
        if (sensor.InJar is not null)
        {
            (Jar jar, ExpectedCourse course) = _firstOfLots[sensor.InJar];
            Took(sensor.Name, await acts.Sensor.GiveAsync(added!.Sensor!, string.Create(CultureInfo.InvariantCulture, $"jar {jar.Number}"), default));
            phAt = course.PhAt;
        }
        InventedRoom room = NumberNine.Rooms.First(room => room.Name == sensor.Room);
        _sensors.Add(new MadeSensor(sensor, added!.Issued.Password, clock.Now, at => room.CelsiusAt(at, now, zone), phAt));
    }

    /// <summary>A moment after its jar was put up, or from the beginning.</summary>
    private static Instant Since(InventedSensor sensor, Instant now) => sensor.InJar is null ? now - History
        : now - Duration.FromDays(NumberNine.Lots.First(lot => lot.Form.Name == sensor.InJar).DaysAgo) + Duration.FromMinutes(1);

    private EntryMark Mark(string by) =>
        new(Guid.CreateVersion7(clock.GetUtcNow()), new Person(by, _people[by].Account.Id), _people[by].Account.Role);

    private string Typed(DateTimeZone zone) => clock.Now.InZone(zone).ToString("uuuu-MM-dd'T'HH:mm", CultureInfo.InvariantCulture);

    private static void Took(string what, IReadOnlyList<Refusal> refusals)
    {
        if (refusals.Count > 0)
            throw new InvalidOperationException($"The demo's own '{what}' is refused: {string.Join("; ", refusals)}");
    }
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
