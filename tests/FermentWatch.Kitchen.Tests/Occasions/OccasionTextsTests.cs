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
        Household household = units == "us" ? FactsOf.Household(TemperatureUnit.Fahrenheit, MassUnit.Pound) : FactsOf.Household();
        var golden = new Scenario.Tests.Golden();
        var told = new HashSet<OccasionKind>();
        foreach ((string name, OccasionFacts facts) in await ScenesAsync(household))
        {
            var all = OccasionRules.Of(facts, Make.SetAside().Begin("occasion"))
                .Where(each => name.StartsWith(each.Kind.ToString(), StringComparison.Ordinal)).ToList();
            Assert.NotEmpty(all);
            string title = OccasionWords.Title(all), body = Assert.Single(all.Select(each => each.Body).Distinct());
            Aloud.Hold(title, body);
            golden.Hold($"notices/{name}-{units}.txt", $"{title}\n{body}\n");
            told.Add(all[0].Kind);
        }
        Assert.Equal(OccasionWords.Told, told.Order());
        golden.Settle();
    }

    private static async Task<IReadOnlyList<(string Name, OccasionFacts OccasionFacts)>> ScenesAsync(Household household)
    {
        var facts = new List<(string, OccasionFacts)>();
        void Add(string name, int day, LocalTime time, Jar[] jars, JarForecast[]? forecasts = null, Member[]? members = null,
            SensorConcern[]? sensors = null) =>
            facts.Add((name, FactsOf.Day(day, time, jars, forecasts, household, members: members, sensors: sensors)));

        PhMeasurement[] below = [Make.Ph(4.0, PhMethod.Meter, 5), Make.Ph(3.9, PhMethod.Meter, 9)];
        Jar one = Make.Jar(1, seen: below), two = Make.Jar(2, seen: below);
        Add("TargetReached-expected", 13, FactsOf.Morning, [one], [Make.Forecast(one, 8, 10.2, 12, acidity: 1.3)]);
        Add("TargetReached-tasted", 13, FactsOf.Morning, [Make.Jar(4, seen: Make.Taste(TasteVerdict.Right, 12))]);
        Add("TargetReached-tasted-late", 33, FactsOf.Morning, [Make.Jar(4, seen: Make.Taste(TasteVerdict.Right, 30))]);
        Add("PastTarget-tasted", 20, FactsOf.Morning, [Make.Jar(4, seen: Make.Taste(TasteVerdict.PastIt, 19))]);
        Add("PhDue", 20, FactsOf.Evening, [one, two]);
        Add("NoReadingByDay5-none", 5, FactsOf.Evening, [.. Enumerable.Range(1, 3).Select(number => Make.Jar(number))]);
        Add("NoReadingByDay5-above", 5, FactsOf.Evening, [Make.Jar(2, seen: Make.Ph(4.9, PhMethod.Meter, 4))]);
        Add("NoReadingByDay7-none", 7, FactsOf.Evening, [.. Enumerable.Range(1, 3).Select(number => Make.Jar(number))]);
        Add("NoReadingByDay7-above", 7, FactsOf.Evening, [Make.Jar(2, seen: Make.Ph(4.9, PhMethod.Meter, 4))]);
        Add("PhRising-recheck", 10, FactsOf.Morning, [Make.Jar(2, seen: [Make.Ph(3.6, PhMethod.Meter, 8), Make.Ph(3.9, PhMethod.Meter, 9)])]);
        Add("PhRising-twice", 10, FactsOf.Morning,
            [Make.Jar(2, seen: [Make.Ph(3.6, PhMethod.Meter, 7), Make.Ph(3.9, PhMethod.Meter, 8), Make.Ph(4.0, PhMethod.Meter, 9)])]);
        Add("PhRising-back-above", 10, FactsOf.Morning, [Make.Jar(2, seen: [Make.Ph(4.2, PhMethod.Meter, 8), Make.Ph(4.8, PhMethod.Meter, 9)])]);
        foreach (SightingKind kind in Enum.GetValues<SightingKind>().Where(Trouble.IsTrouble))
        {
            Jar jar = Make.Jar(3, seen: Make.Sighting(kind, 4));
            Add(kind == SightingKind.BrineLow ? "BrineLow" : $"CloserWatch-{kind}", 4, FactsOf.Evening, [jar]);
            Add($"AdultAsked-{kind}", 4, FactsOf.Evening, [jar], members: [Child]);
        }
        Add("EarlyChilling-not-measured", 8, FactsOf.Evening, [Make.Jar(5, seen: Make.Stage(JarStage.Cold, 8))]);
        Add("EarlyChilling-measured", 8, FactsOf.Evening, [Make.Jar(5, seen: [Make.Ph(3.9, PhMethod.Meter, 7), Make.Stage(JarStage.Cold, 8)])]);
        Add("PassedAcidLine", 5, FactsOf.Evening, [Make.Jar(7, seen: Make.Ph(4.1, PhMethod.Meter, 5))]);
        Household nothing = FactsOf.Household(household.TemperatureUnit, household.MassUnit);
        nothing.PhTool = PhTool.Nothing;
        facts.Add(("NotMeasuredHere",
            FactsOf.Day(5, FactsOf.Morning, [.. Enumerable.Range(1, 20).Select(number => Make.Jar(number))], household: nothing)));
        Add("EatFirst", 160, FactsOf.Morning, [Make.Jar(5, seen: Make.Stage(JarStage.Cold, 30))]);
        Add("SensorSilent", 3, FactsOf.Morning, [],
            sensors: [new(OccasionKind.SensorSilent, Guid.NewGuid(), "counter", "Silent",
            "Silent: last heard 5 hours ago, and it may be silent for 45 minutes. Look at its power and its network.")]);
        Add("SensorWrong", 3, FactsOf.Morning, [],
            sensors: [new(OccasionKind.SensorWrong, Guid.NewGuid(), "counter", "Stuck",
            "The same value for more than a day: it probably hangs. Take its power away for a moment.")]);
        Add("CalibrationDue", 3, FactsOf.Morning, [],
            sensors: [new(OccasionKind.CalibrationDue, Guid.NewGuid(), "probe", "Calibration",
            "Last checked in buffer 9 days ago. Check it in two buffers this week; until then it informs only.")]);
        facts.AddRange(await WarmthAsync(household));
        return facts;
    }

    private static async Task<IEnumerable<(string, OccasionFacts)>> WarmthAsync(Household household)
    {
        var facts = new List<(string, OccasionFacts)>();
        foreach ((string name, double celsius, int quarters) in ((string, double, int)[])[("TooWarm", 25.1, 50), ("FarTooWarm", 27.8, 30),
            ("TooCold", 13.2, 400)])
        {
            Instant now = (Make.Packed.InUtc().Date.PlusDays(4) + FactsOf.Morning).InUtc().ToInstant();
            facts.Add((name, FactsOf.Day(4, FactsOf.Morning, [.. Enumerable.Range(1, 4).Select(number => Make.Jar(number))],
                household: household, temperatures: await FactsOf.TemperaturesAsync(now, [.. Enumerable.Repeat(celsius, quarters)]))));
        }
        return facts;
    }
}
