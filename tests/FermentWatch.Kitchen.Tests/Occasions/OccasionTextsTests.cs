using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Tests.Doubles;
using FermentWatch.Kitchen.Tests.Golden;
using FermentWatch.Kitchen.Troubles;
using FermentWatch.Scenario.Tests;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Occasions;

/// <summary>
/// Every notice of an occasion as a golden text under tests/scenario/notices, in metric and US units; FERMENTWATCH_APPROVE=1
/// writes them anew.
/// </summary>
public class OccasionTextsTests
{
    private static readonly Member Child = new("Mira", MemberRole.Child, new Duty { Person = "Mira" });

    [Theory]
    [InlineData("metric")]
    [InlineData("us")]
    public async Task EveryNotice_ReadAloudInUnder15Seconds_IsAsApproved(string units)
    {
        Household household = units == "us" ? SceneOf.Household(TemperatureUnit.Fahrenheit, MassUnit.Pound) : SceneOf.Household();
        var golden = new Scenario.Tests.Golden();
        var told = new HashSet<OccasionKind>();
        foreach ((string name, Scene scene) in await ScenesAsync(household))
        {
            var all = OccasionRules.Of(scene, Make.SetAside().Begin("occasion")).Where(each => name.StartsWith(each.Kind.ToString(), StringComparison.Ordinal)).ToList();
            Assert.NotEmpty(all);
            string title = OccasionWords.Title(all), body = Assert.Single(all.Select(each => each.Body).Distinct());
            Aloud.Hold(title, body);
            golden.Hold($"notices/{name}-{units}.txt", $"{title}\n{body}\n");
            told.Add(all[0].Kind);
        }
        Assert.Equal(OccasionWords.Told, told.Order());
        golden.Settle();
    }

    private static async Task<IReadOnlyList<(string Name, Scene Scene)>> ScenesAsync(Household household)
    {
        var scenes = new List<(string, Scene)>();
        void Add(string name, int day, LocalTime time, Jar[] jars, JarForecast[]? forecasts = null, Member[]? members = null, SensorConcern[]? sensors = null) =>
            scenes.Add((name, SceneOf.Day(day, time, jars, forecasts, household, members: members, sensors: sensors)));

        PhMeasurement[] below = [Make.Ph(4.0, PhMethod.Meter, 5), Make.Ph(3.9, PhMethod.Meter, 9)];
        Jar one = Make.Jar(1, seen: below), two = Make.Jar(2, seen: below);
        Add("TargetReached-expected", 13, SceneOf.Morning, [one], [Make.Forecast(one, 8, 10.2, 12, acidity: 1.3)]);
        Add("TargetReached-tasted", 13, SceneOf.Morning, [Make.Jar(4, seen: Make.Taste(TasteVerdict.Right, 12))]);
        Add("TargetReached-tasted-late", 33, SceneOf.Morning, [Make.Jar(4, seen: Make.Taste(TasteVerdict.Right, 30))]);
        Add("PastTarget-tasted", 20, SceneOf.Morning, [Make.Jar(4, seen: Make.Taste(TasteVerdict.PastIt, 19))]);
        Add("PhDue", 20, SceneOf.Evening, [one, two]);
        Add("NoReadingByDay5-none", 5, SceneOf.Evening, [.. Enumerable.Range(1, 3).Select(number => Make.Jar(number))]);
        Add("NoReadingByDay5-above", 5, SceneOf.Evening, [Make.Jar(2, seen: Make.Ph(4.9, PhMethod.Meter, 4))]);
        Add("NoReadingByDay7-none", 7, SceneOf.Evening, [.. Enumerable.Range(1, 3).Select(number => Make.Jar(number))]);
        Add("NoReadingByDay7-above", 7, SceneOf.Evening, [Make.Jar(2, seen: Make.Ph(4.9, PhMethod.Meter, 4))]);
        Add("PhRising-recheck", 10, SceneOf.Morning, [Make.Jar(2, seen: [Make.Ph(3.6, PhMethod.Meter, 8), Make.Ph(3.9, PhMethod.Meter, 9)])]);
        Add("PhRising-twice", 10, SceneOf.Morning, [Make.Jar(2, seen: [Make.Ph(3.6, PhMethod.Meter, 7), Make.Ph(3.9, PhMethod.Meter, 8), Make.Ph(4.0, PhMethod.Meter, 9)])]);
        Add("PhRising-back-above", 10, SceneOf.Morning, [Make.Jar(2, seen: [Make.Ph(4.2, PhMethod.Meter, 8), Make.Ph(4.8, PhMethod.Meter, 9)])]);
        foreach (SightingKind kind in Enum.GetValues<SightingKind>().Where(Trouble.IsTrouble))
        {
            Jar jar = Make.Jar(3, seen: Make.Sighting(kind, 4));
            Add(kind == SightingKind.BrineLow ? "BrineLow" : $"CloserWatch-{kind}", 4, SceneOf.Evening, [jar]);
            Add($"AdultAsked-{kind}", 4, SceneOf.Evening, [jar], members: [Child]);
        }
        Add("EarlyChilling-not-measured", 8, SceneOf.Evening, [Make.Jar(5, seen: Make.Stage(JarStage.Cold, 8))]);
        Add("EarlyChilling-measured", 8, SceneOf.Evening, [Make.Jar(5, seen: [Make.Ph(3.9, PhMethod.Meter, 7), Make.Stage(JarStage.Cold, 8)])]);
        Add("PassedAcidLine", 5, SceneOf.Evening, [Make.Jar(7, seen: Make.Ph(4.1, PhMethod.Meter, 5))]);
        Household nothing = SceneOf.Household(household.TemperatureUnit, household.MassUnit);
        nothing.PhTool = PhTool.Nothing;
        scenes.Add(("NotMeasuredHere", SceneOf.Day(5, SceneOf.Morning, [.. Enumerable.Range(1, 20).Select(number => Make.Jar(number))], household: nothing)));
        Add("EatFirst", 160, SceneOf.Morning, [Make.Jar(5, seen: Make.Stage(JarStage.Cold, 30))]);
        Add("SensorSilent", 3, SceneOf.Morning, [], sensors: [new(OccasionKind.SensorSilent, Guid.NewGuid(), "counter", "Silent", "Silent: last heard 5 hours ago, and it may be silent for 45 minutes. Look at its power and its network.")]);
        Add("SensorWrong", 3, SceneOf.Morning, [], sensors: [new(OccasionKind.SensorWrong, Guid.NewGuid(), "counter", "Stuck", "The same value for more than a day: it probably hangs. Take its power away for a moment.")]);
        Add("CalibrationDue", 3, SceneOf.Morning, [], sensors: [new(OccasionKind.CalibrationDue, Guid.NewGuid(), "probe", "Calibration", "Last checked in buffer 9 days ago. Check it in two buffers this week; until then it informs only.")]);
        scenes.AddRange(await WarmthAsync(household));
        return scenes;
    }

    private static async Task<IEnumerable<(string, Scene)>> WarmthAsync(Household household)
    {
        var scenes = new List<(string, Scene)>();
        foreach ((string name, double celsius, int quarters) in ((string, double, int)[])[("TooWarm", 25.1, 50), ("FarTooWarm", 27.8, 30), ("TooCold", 13.2, 400)])
        {
            Instant now = (Make.Packed.InUtc().Date.PlusDays(4) + SceneOf.Morning).InUtc().ToInstant();
            scenes.Add((name, SceneOf.Day(4, SceneOf.Morning, [.. Enumerable.Range(1, 4).Select(number => Make.Jar(number))],
                household: household, temperatures: await SceneOf.TemperaturesAsync(now, [.. Enumerable.Repeat(celsius, quarters)]))));
        }
        return scenes;
    }
}
