using System.Globalization;
using System.Text;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Rounds;

/// <summary>
/// What a household is told in its first three weeks, every message of it, as golden texts under tests/scenario/told: twenty
/// healthy jars with nothing to measure with, the same with a meter, and one jar of each trouble, seen to. The passes run each
/// hour from evening to morning on records in memory and forecasts that do not move; FERMENTWATCH_APPROVE=1 writes the texts anew.
/// </summary>
public class ThreeWeeksTextsTests
{
    private const int Days = 21;
    private const int MostWords = 40;

    private readonly Scenario.Tests.Golden _golden = new();
    private readonly StringBuilder _told = new();
    private readonly HashSet<string> _before = [];

    [Fact]
    public async Task TwentyHealthyJars_NothingToMeasureWith_AreThreeCalmWeeks()
    {
        KitchenInMemory kitchen = Twenty(PhTool.Nothing);
        var asks = new List<int>();
        for (int day = 1; day <= Days; day++)
        {
            string morning = await MorningAsync(kitchen, day);
            AssertCalm(morning);
            Assert.DoesNotContain("pH", morning, StringComparison.Ordinal);
            asks.Add(morning.Split('\n').Where(line => line.StartsWith("Taste: ", StringComparison.Ordinal))
                .Sum(line => line.Split("(for").Length - 1));
            AssertNothingIsOrange(kitchen, day);
            Look(kitchen, day);
        }
        Assert.All(Enumerable.Range(0, Days - 6), from => Assert.InRange(asks.Skip(from).Take(7).Sum(), 0, 3));
        Assert.True(asks.Sum() > 0);
        Assert.Single(kitchen.Notices, notice => notice.Key.StartsWith("occasion/NotMeasuredHere", StringComparison.Ordinal));
        Hold("nothing");
    }

    [Fact]
    public async Task TwentyHealthyJars_WithAMeter_AreAskedForTheirPhTogether()
    {
        KitchenInMemory kitchen = Twenty(PhTool.Meter);
        for (int day = 1; day <= Days; day++)
        {
            string morning = await MorningAsync(kitchen, day);
            AssertCalm(morning);
            Assert.InRange(morning.Split('\n').Count(line => line.StartsWith("Measure pH", StringComparison.Ordinal)), 0, 1);
            Assert.InRange(Today(kitchen, day).Where(each => each.Step.Kind == StepKind.Measure).Select(each => each.Step.InBrief).Distinct()
                .Count(), 0, 1);
            AssertNothingIsOrange(kitchen, day);
            foreach (RoundJar each in Today(kitchen, day).Where(each => each.LookFors.Contains(LookFor.MeasurePh)).ToList())
                each.Jar.Observations.Add(Make.Ph(Math.Max(3.6, 4.6 - (0.1 * day)), PhMethod.Meter, day - 0.3));
            Look(kitchen, day);
        }
        Assert.All(kitchen.Jars, jar => Assert.Contains(jar.Standing, each => each is PhMeasurement));
        Hold("meter");
    }

    [Fact]
    public async Task OneJarOfEachTrouble_SeenToAndWell_IsTheTroubleOver()
    {
        var kitchen = new KitchenInMemory(House(PhTool.Nothing));
        kitchen.Reach("Mira");
        (SightingKind Seen, HandlingKind? Done)[] troubles =
        [
            (SightingKind.PiecesUp, HandlingKind.PressedUnder), (SightingKind.Film, HandlingKind.Skimmed),
                (SightingKind.BrineLow, HandlingKind.BrineToppedUp),
            (SightingKind.Gas, HandlingKind.GasLetOut), (SightingKind.FuzzOrUnsure, null), (SightingKind.OffSmell, null), (SightingKind.Slime, null),
        ];
        Add(kitchen, 1, troubles.Length, "cabbage", 14);
        for (int day = 1; day <= 14; day++)
        {
            await MorningAsync(kitchen, day);
            if (day == 7)
                foreach ((SightingKind seen, _) in troubles)
                    kitchen.Jars[Array.FindIndex(troubles, each => each.Seen == seen)].Observations.Add(Make.Sighting(seen, day - 0.35));
            else if (day == 9)
                foreach ((_, HandlingKind? done) in troubles.Where(each => each.Done is not null))
                    kitchen.Jars[Array.FindIndex(troubles, each => each.Done == done)].Observations.Add(Make.Handling(done!.Value, day - 0.35));
            if (day is not (7 or 8))
                Look(kitchen, day);
            bool small = day is >= 7 and < 11, big = day >= 7;
            Assert.Equal([small, small, small, false, big, big, big], Today(kitchen, day).Select(each => each.State.ForecastWithdrawn));
        }
        Hold("trouble");
    }

    private static Household House(PhTool tool)
    {
        Household household = Make.Household("UTC");
        household.PhTool = tool;
        return household;
    }

    private static KitchenInMemory Twenty(PhTool tool)
    {
        var kitchen = new KitchenInMemory(House(tool));
        kitchen.Reach("Mira");
        Add(kitchen, 1, 7, "cabbage", 9);
        Add(kitchen, 8, 7, "red cabbage", 10);
        Add(kitchen, 15, 6, "carrot", 12);
        return kitchen;
    }

    private static void Add(KitchenInMemory kitchen, int first, int count, string what, double expectedDay)
    {
        var batch = Guid.NewGuid();
        foreach (int number in Enumerable.Range(first, count))
        {
            var jar = new Jar
            {
                Id = Guid.NewGuid(), Number = number, Name = what, BatchId = batch, PackedAt = Make.Packed, Portions = [new Portion(what, 0.8)],
                    Cut = Cut.Shredded,
                Salting = new Salting(SaltKnowledge.Weighed, 2.25), VesselLitres = 1, Cover = Cover.Weight, Lid = Lid.Vented, Target = Sourness.Sour,
            };
            jar.Placements.Add(new JarPlacement { Id = Guid.NewGuid(), JarId = jar.Id, PlaceId = Make.Counter.Id, From = jar.PackedAt });
            kitchen.Jars.Add(jar);
            kitchen.Forecasts[jar.Id] = Make.Forecast(jar, expectedDay - 2, expectedDay, expectedDay + 5);
        }
    }

    /// <summary>The morning's message; every message since the last one is noted with it.</summary>
    private async Task<string> MorningAsync(KitchenInMemory kitchen, int day)
    {
        Instant morning = At(day, 7);
        for (Instant now = At(day - 1, 17); now <= morning; now += Duration.FromMinutes(60))
        {
            kitchen.Revision++;
            await kitchen.RoundPass().RunAsync(now, CancellationToken.None);
            await kitchen.OccasionPass().RunAsync(now, CancellationToken.None);
        }
        var told = kitchen.Notices.Where(notice => _before.Add(notice.Key)).ToList();
        _told.Append(CultureInfo.InvariantCulture, $"== day {day}\n");
        foreach (Notice notice in told)
            _told.Append(CultureInfo.InvariantCulture, $"{notice.Title}\n{notice.Body}\n\n");
        Notice round = told.Single(notice => notice.Key.StartsWith("round/", StringComparison.Ordinal));
        return $"{round.Title}\n{round.Body}";
    }

    private static void Look(KitchenInMemory kitchen, int day)
    {
        foreach (Jar jar in kitchen.Jars)
            jar.Observations.Add(Make.Look(day - 0.3));
    }

    private static IEnumerable<RoundJar> Today(KitchenInMemory kitchen, int day)
    {
        Household household = kitchen.ReadAsync(CancellationToken.None).Result;
        var rules = new JarRules(household, kitchen.Forecasts, new TastingPlan(kitchen.Jars, kitchen.Forecasts, household, [.. kitchen.Rounds]),
            new HashSet<Guid>());
        return kitchen.Jars.Select(jar => rules.On(jar, At(day, 7).InUtc().Date, At(day, 7)));
    }

    private static void AssertNothingIsOrange(KitchenInMemory kitchen, int day)
    {
        Assert.DoesNotContain(Today(kitchen, day), each => each.Step.Urgent);
        Assert.InRange(ToDoLine.Of(Today(kitchen, day)).Count, 0, 4);
    }

    private static void AssertCalm(string morning)
    {
        int words = morning.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries).Length;
        Assert.True(words < MostWords, $"{words} words:\n{morning}");
    }

    private void Hold(string name)
    {
        _golden.Hold($"told/{name}.txt", _told.ToString());
        _golden.Settle();
    }

    private static Instant At(int day, int hour) => (Make.Packed.InUtc().Date.PlusDays(day) + new LocalTime(hour, 0)).InUtc().ToInstant();
}
