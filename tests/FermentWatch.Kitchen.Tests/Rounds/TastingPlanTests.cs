using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Rounds;

public class TastingPlanTests
{
    [Fact]
    public void Of_AskNobodyAnswers_ComesTheNextDayThenAfterThreeThenWeekly() =>
        Assert.Equal([10, 11, 14, 21, 28], AskedOn(Lot(1, 1), expectedDay: 10, lateDay: 40));

    /// <summary>A household that begins with jars packed long ago was not asked on days on which nobody knew of them.</summary>
    [Fact]
    public void Of_HouseholdThatBeginsWithAJarInItsTastingDays_IsAskedThatDayTheNextAndAfterThree()
    {
        List<Jar> lot = Lot(1, 1);
        Instant begin = Make.Packed.Plus(Duration.FromDays(12));
        TastingPlan plan = Plan(lot, 10, 40, rounds: [new Round { Date = Date(12), DueAt = begin, OpenedAt = begin, Missed = true }]);
        Assert.Equal([12, 13, 16], Enumerable.Range(12, 7).Where(day => plan.Of(lot[0], Date(day))?.Kind == TasteAskKind.Taste));
    }

    [Fact]
    public void Of_LotOfSeven_AsksForOneAndNamesThoseItStandsFor()
    {
        List<Jar> lot = Lot(1, 7);
        var plan = Plan(lot, 10, 40);
        Assert.Equal((TasteAskKind.Taste, 1), (plan.Of(lot[0], Date(10))!.Kind, plan.Of(lot[0], Date(10))!.By));
        Assert.Equal([1, 2, 3, 4, 5, 6, 7], plan.Of(lot[0], Date(10))!.Lot);
        Assert.All(lot.Skip(1), jar => Assert.Equal((TasteAskKind.Nothing, 1), (plan.Of(jar, Date(10))!.Kind, plan.Of(jar, Date(10))!.By)));
    }

    [Fact]
    public void Of_JarThatStandsElsewhereOrIsSaltedOtherwise_IsItsOwnLot()
    {
        List<Jar> lot = Lot(1, 3);
        lot[2].Placements.Add(new JarPlacement { Id = Guid.NewGuid(), JarId = lot[2].Id, PlaceId = Make.Cellar.Id, From = Make.Day(2) });
        Assert.Equal([3], Plan(lot, 10, 40).Of(lot[2], Date(10))!.Lot);
    }

    [Fact]
    public void Of_TroubleAtTheJarThatStands_AnotherStands()
    {
        List<Jar> lot = Lot(1, 3);
        lot[0].Observations.Add(Make.Sighting(SightingKind.Film, 9));
        var plan = Plan(lot, 10, 40);
        Assert.Null(plan.Of(lot[0], Date(10)));
        Assert.Equal(2, plan.Of(lot[1], Date(10))!.By);
    }

    [Fact]
    public void Of_TastedNearly_AsksAgainFromTheNextDay()
    {
        List<Jar> lot = Lot(1, 2);
        lot[0].Observations.Add(Make.Taste(TasteVerdict.Nearly, 11));
        Assert.Equal([12, 13, 16, 23], AskedOn(lot, 10, 40).Where(day => day < 30));
    }

    [Theory]
    [InlineData(TasteVerdict.NotYet, 10, 13)]
    [InlineData(TasteVerdict.NotYet, 15, 15)]
    [InlineData(TasteVerdict.NotYet, 40, 18)]
    [InlineData(TasteVerdict.Nearly, 40, 14)]
    public void Of_TastedBeforeItIsRight_AsksAgainAsExpectedAndWithinAWeekOrThreeDays(TasteVerdict verdict, int expectedDay, int again)
    {
        List<Jar> lot = Lot(1, 2);
        lot[0].Observations.Add(Make.Taste(verdict, 11));
        Assert.Equal(Date(again), Plan(lot, expectedDay, 60).Of(lot[0], Date(11))!.From);
    }

    [Fact]
    public void Of_TastedRightAndPutIntoTheCold_TheRestOfTheLotIsNotAskedToTaste()
    {
        List<Jar> lot = Lot(1, 3);
        lot[0].Observations.AddRange([Make.Taste(TasteVerdict.Right, 11), Make.Stage(JarStage.Cold, 11.1)]);
        Assert.Empty(AskedOn(lot, 10, 40));
        Assert.True(Plan(lot, 10, 40).Of(lot[1], Date(12))!.SaidRight);
    }

    [Fact]
    public void Of_PastItsDays_IsAskedOnceAsADecision()
    {
        List<Jar> lot = Lot(1, 4);
        Assert.Equal([10, 11, 14], AskedOn(lot, 10, 20));
        Assert.Equal([21], AskedOn(lot, 10, 20, TasteAskKind.Decide));
        lot[0].Observations.Add(Make.Handling(HandlingKind.LeftStanding, 20.5));
        Assert.Empty(AskedOn(lot, 10, 20, TasteAskKind.Decide));
    }

    /// <summary>The last day moves with the weather: over a day, or away again once it was asked about.</summary>
    [Theory]
    [InlineData(20, 21, 22, 23, 24, 25)]
    [InlineData(24, 24, 24, 20, 20, 20)]
    [InlineData(30, 30, 18, 18, 40, 18)]
    public void Of_PastItsDays_IsAskedOnceThoughTheForecastMoves(params int[] lateDays)
    {
        List<Jar> lot = Lot(1, 4);
        List<Round> rounds = [];
        for (int day = 10; day < 40; day++)
            rounds.Add(Opened(Plan(lot, 10, lateDays[Math.Clamp(day - 20, 0, lateDays.Length - 1)], rounds: rounds), day));
        Assert.Equal([lot[0].Id], Assert.Single(rounds, round => round.DecideAsked.Count > 0).DecideAsked);
    }

    [Fact]
    public void Of_NotTastingThisWeek_PassesOverSevenDays()
    {
        Household household = Make.Household("UTC");
        household.TastingAgainFrom = Date(18);
        Assert.Equal([10, 18, 21, 28], AskedOn(Lot(1, 1), 10, 40, household: household));
    }

    [Theory]
    [InlineData(7, 7, 6)]
    [InlineData(4, 3, 4, 3, 3, 3)]
    [InlineData(1, 1, 1, 1, 1, 1, 1, 1, 1, 1)]
    public void Of_LotsDueTogether_AskAtMostThreeTimesInAnyWeekAndPassOverNone(params int[] sizes)
    {
        List<Jar> jars = [];
        foreach (int size in sizes)
            jars.AddRange(Lot(jars.Count + 1, size));
        var plan = Plan(jars, 10, 60);
        int[][] asks = [.. Enumerable.Range(0, 60).Select(day =>
            jars.Where(jar => plan.Of(jar, Date(day))?.Kind == TasteAskKind.Taste).Select(jar => jar.Number).ToArray())];
        Assert.All(Enumerable.Range(0, 53), day => Assert.InRange(asks.Skip(day).Take(7).Sum(each => each.Length), 0, 3));
        Assert.Equal(sizes.Length, asks.Take(10 + 7 * ((sizes.Length + 2) / 3)).SelectMany(each => each).Distinct().Count());
    }

    [Theory]
    [InlineData(TasteVerdict.NotYet)]
    [InlineData(TasteVerdict.Nearly)]
    [InlineData(TasteVerdict.Right)]
    public void Of_LotsThatAreTastedWhenAsked_AskAtMostThreeTimesInAnySevenDays(TasteVerdict verdict)
    {
        List<Jar> jars = [.. Lot(1, 3), .. Lot(4, 3), .. Lot(7, 3), .. Lot(10, 3), .. Lot(13, 3)];
        List<Round> rounds = [];
        for (int day = 8; day < 50; day++)
        {
            Round round = Opened(Plan(jars, 10, 60, rounds: rounds), day);
            rounds.Add(round);
            foreach (Jar asked in jars.Where(jar => round.TasteAsked.Contains(jar.Id)))
                asked.Observations.Add(Make.Taste(verdict, day + 0.3));
        }
        Assert.All(Enumerable.Range(0, 36), from => Assert.InRange(rounds.Skip(from).Take(7).Sum(round => round.TasteAsked.Count), 0, 3));
        Assert.Equal([1, 4, 7, 10, 13], jars.Where(jar => jar.Standing.Any(each => each is Taste)).Select(jar => jar.Number));
    }

    [Fact]
    public void Of_ForecastThatMovesDayByDay_AsksNobodyAnew()
    {
        List<Jar> jars = Lot(1, 1);
        List<Round> rounds = [];
        for (int day = 8; day < 30; day++)
            rounds.Add(Opened(Plan(jars, Math.Clamp(day, 10, 13), 60, rounds: rounds), day));
        Assert.Equal([10, 11, 14, 21, 28], rounds.Where(round => round.TasteAsked.Count > 0)
            .Select(round => Period.DaysBetween(Date(0), round.Date)));
    }

    [Fact]
    public void Of_ForecastThatMovesAfterTheMorning_AsksOnUntilItIsAnswered()
    {
        List<Jar> jars = Lot(1, 1);
        Round[] rounds = [Opened(Plan(jars, 10, 60), 10)];
        Assert.Equal((TasteAskKind.Taste, Date(10)), Kind(Plan(jars, 12, 60, rounds: rounds)));
        jars[0].Observations.Add(Make.Taste(TasteVerdict.NotYet, 10.3));
        Assert.Equal((TasteAskKind.Nothing, Date(12)), Kind(Plan(jars, 12, 60, rounds: rounds)));

        (TasteAskKind, LocalDate?) Kind(TastingPlan plan) => (plan.Of(jars[0], Date(10))!.Kind, plan.Of(jars[0], Date(10))!.From);
    }

    [Fact]
    public void Of_LikeJarsPutUpOneByOneOnADay_AreOneLot()
    {
        List<Jar> jars = [.. Lot(1, 1), .. Lot(2, 1), .. Lot(3, 1)];
        jars[1].PackedAt = Make.Packed.Plus(Duration.FromHours(2));
        foreach (Jar jar in jars)
            jar.Salting = new Salting(SaltKnowledge.Weighed, 2);
        Assert.Equal([1, 2, 3], Plan(jars, 10, 40).Of(jars[2], Date(10))!.Lot);
        jars[1].PackedAt = Make.Packed.Plus(Duration.FromDays(1));
        Assert.Equal([1, 3], Plan(jars, 10, 40).Of(jars[2], Date(10))!.Lot);
    }

    [Theory]
    [InlineData(TasteVerdict.Right)]
    [InlineData(TasteVerdict.NotYet)]
    public void Of_OneAskAnswered_LeavesTheOthersOfThatDayAsTheyWere(TasteVerdict verdict)
    {
        List<Jar> jars = [.. Lot(1, 3), .. Lot(4, 3), .. Lot(7, 3), .. Lot(10, 3)];
        int answered = 0;
        for (int day = 10; day < 40; day++)
        {
            int[] before = Asked(jars, day);
            if (before.Length == 0)
                continue;
            answered++;
            jars.Single(jar => jar.Number == before[0]).Observations.Add(Make.Taste(verdict, day + 0.3));
            Assert.Equal(before.Skip(1), Asked(jars, day));
        }
        Assert.True(answered >= 4);

        int[] Asked(List<Jar> all, int day)
        {
            var plan = Plan(all, 10, 60);
            return [.. all.Where(jar => plan.Of(jar, Date(day))?.Kind == TasteAskKind.Taste).Select(jar => jar.Number)];
        }
    }

    [Fact]
    public void Of_JarOfWhichNothingIsForecast_IsTastedAfterAWeekAndAfterThreeWhereItMayHoldNitriteUnmeasured()
    {
        Jar jar = Make.Jar(1);
        jar.Salting = new Salting(SaltKnowledge.Weighed, 1.2);
        jar.Portions = [new Portion("zucchini", 0.8)];
        Assert.Equal(Date(7), First(jar));
        jar.Portions = [new Portion("okra", 0.8)];
        Assert.Equal(Date(21), First(jar));
        jar.Observations.Add(Make.Ph(3.9, Kinetics.Observation.PhMethod.Meter, 5));
        Assert.Equal(Date(7), First(jar));

        static LocalDate? First(Jar jar) => new TastingPlan([jar], new Dictionary<Guid, JarForecast>(), Make.Household("UTC"), [])
            .Of(jar, Date(0))!.From;
    }

    private static List<Jar> Lot(int first, int count)
    {
        var batch = Guid.NewGuid();
        return [.. Enumerable.Range(first, count).Select(number =>
        {
            Jar like = Make.Jar(number);
            var jar = new Jar
            {
                Id = like.Id, Number = number, Name = like.Name, BatchId = batch, PackedAt = like.PackedAt, Portions = like.Portions, Cut = like.Cut,
                Salting = new Salting(SaltKnowledge.Weighed, 2 + 0.01 * first), VesselLitres = 1, Cover = like.Cover, Lid = like.Lid,
                Target = like.Target,
            };
            jar.Placements.AddRange(like.Placements);
            return jar;
        })];
    }

    private static TastingPlan Plan(List<Jar> jars, double expectedDay, double lateDay, Household? household = null,
        IReadOnlyList<Round>? rounds = null) =>
        new(jars, jars.ToDictionary(jar => jar.Id, jar => Make.Forecast(jar, expectedDay - 2, expectedDay, lateDay)), household
            ?? Make.Household("UTC"),
            rounds ?? []);

    /// <summary>The round of a day as it is opened, with what it asks.</summary>
    private static Round Opened(TastingPlan plan, int day)
    {
        Instant morning = Make.Packed.Plus(Duration.FromDays(day));
        return new Round { Date = Date(day), DueAt = morning, OpenedAt = morning, Missed = false, TasteAsked = plan.AskedOn(Date(day)),
            DecideAsked = plan.DecidedOn(Date(day)) };
    }

    private static IEnumerable<int> AskedOn(List<Jar> jars, double expectedDay, double lateDay, TasteAskKind kind = TasteAskKind.Taste,
        Household? household = null)
    {
        TastingPlan plan = Plan(jars, expectedDay, lateDay, household);
        return Enumerable.Range(0, 32).Where(day => jars.Exists(jar => plan.Of(jar, Date(day))?.Kind == kind));
    }

    private static LocalDate Date(int day) => Make.Packed.InUtc().Date.PlusDays(day);
}
