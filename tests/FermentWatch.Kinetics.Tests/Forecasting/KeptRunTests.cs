using System.Text.Json;
using CsCheck;
using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Household;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Tests.Forecasting;

/// <summary>A forecast that goes on from the one before is the one made anew, bit for bit, whatever came in between.</summary>
public class KeptRunTests
{
    private const int StepsPerDay = TemperatureCourse.StepsPerDay;

    private static readonly int Draws = Environment.GetEnvironmentVariable("FERMENTWATCH_TESTS_LONG") == "1" ? 500 : 25;

    /// <summary>A jar on its way: temperatures as they came, and how many quarter hours are known at each look.</summary>
    private sealed record Way(double[] Celsius, int[] Known, PhReading[] Readings, TasteReading[] Tastes, bool Taught, bool PastIsCorrected);

    private static readonly Gen<Way> AnyWay =
        from days in Gen.Int[4, 12]
        from celsius in Gen.Double[4, 30].Array[days * StepsPerDay]
        from steps in Gen.Int[1, 60].Array[3, 6]
        from readings in Gen.Select(Gen.Double[0.5, 3], Gen.Double[3.6, 6]).Array[0, 2]
        from tastes in Gen.Select(Gen.Double[1, 3], Gen.Enum<TasteAnswer>()).Array[0, 1]
        from taught in Gen.Bool
        from corrected in Gen.Bool
        select new Way(celsius, [.. steps.Select((_, i) => Math.Min((3 * StepsPerDay) + steps.Take(i + 1).Sum(), celsius.Length))],
        [.. readings.Select(each => new PhReading(each.Item1, each.Item2, PhMethod.Meter))],
            [.. tastes.Select(each => new TasteReading(each.Item1, each.Item2))], taught, corrected);

    [Fact]
    public void Run_GoingOnFromTheForecastBefore_IsTheOneMadeAnew() => AnyWay.Sample(way =>
    {
        KeptRun? kept = null;
        double[] celsius = way.Celsius;
        for (int i = 0; i < way.Known.Length; i++)
        {
            if (way.PastIsCorrected && i == 2)
                celsius = [.. celsius.Select((each, at) => at == StepsPerDay ? each + 3 : each)];
            ForecastRequest request = Request(way, celsius[..way.Known[i]]);
            (Forecast goneOn, kept) = Forecaster.Run(request, "jar", way.Known[i] / (double)StepsPerDay, kept);
            Assert.Equal(Text(Forecaster.Run(request)), Text(goneOn));
        }
    }, iter: Draws, threads: 1);

    [Fact]
    public void Reached_AQuarterHourOn_IsTheHalfDayBeforeThePresent()
    {
        double[] celsius = [.. Enumerable.Range(0, 10 * StepsPerDay).Select(i => 19 + Math.Sin(i / 15.0))];
        var way = new Way(celsius, [], [new PhReading(2, 4.4, PhMethod.Meter)], [], false, false);
        (_, KeptRun? kept) = Forecaster.Run(Request(way, celsius), "jar", 10, null);
        celsius = [.. celsius, 25];
        JarMembers next = Members(Request(way, celsius));

        Assert.Equal(24 * 9.5, kept!.Lines.ReachedIn(next.Climate)!.Hours);
        Assert.NotNull(kept.Lines.In(next.Climate));
    }

    [Fact]
    public void Reached_PastCorrected_IsNowhereAndMembersStandWhereTheReadingWasBefore()
    {
        double[] celsius = [.. Enumerable.Repeat(19.0, 10 * StepsPerDay)];
        var way = new Way(celsius, [], [new PhReading(2, 4.4, PhMethod.Meter)], [], false, false);
        (_, KeptRun? kept) = Forecaster.Run(Request(way, celsius), "jar", 10, null);
        celsius[5 * StepsPerDay] = 24;

        Assert.Null(kept!.Lines.ReachedIn(Members(Request(way, celsius)).Climate));
        Assert.NotNull(kept.Lines.In(Members(Request(way, celsius)).Climate));
        celsius[StepsPerDay] = 24;
        Assert.Null(kept.Lines.In(Members(Request(way, celsius)).Climate));
    }

    [Fact]
    public void Run_OtherFacts_GoesOnFromNothing()
    {
        double[] celsius = [.. Enumerable.Repeat(19.0, 4 * StepsPerDay)];
        var way = new Way(celsius, [], [], [], false, false);
        (_, KeptRun? kept) = Forecaster.Run(Request(way, celsius), "jar", 4, null);
        ForecastRequest saltier = Request(way, celsius) with { Recipe = Recipe(3.0) };

        Assert.Equal(Text(Forecaster.Run(saltier)), Text(Forecaster.Run(saltier, "saltier", 4, kept).Forecast));
    }

    private static JarRecipe Recipe(double saltPercent) => JarRecipe.Of(Vegetable.Of("cabbage"), Cut.Shredded, saltPercent);

    private static ForecastRequest Request(Way way, double[] known) => new()
    {
        Recipe = Recipe(2.25),
        Temperatures = TemperatureCourse.FromSteps([.. known.Select(each => TemperatureStep.Room(each))], TypicalRoom.Usual)
            .Then(known.Length / (double)StepsPerDay, TemperatureCourse.Constant(known[^1], 2)),
        Readings = way.Readings, Tastes = way.Tastes, Household = way.Taught ? new HouseholdPrior(0.1, 0.3, 0, 0.2) : null,
        Target = new ForecastTarget(TargetKind.AcidityPercentLactic, 1.2), Seed = 7, Members = 32,
        Days = Math.Ceiling(known.Length / (double)StepsPerDay) + 15, EveryDays = 0.5,
    };

    private static JarMembers Members(ForecastRequest request) =>
        new(request.Recipe, request.Temperatures, request.Days, ModelParameters.Current, new PriorSpread());

    private static string Text(Forecast forecast) => JsonSerializer.Serialize(forecast);
}
