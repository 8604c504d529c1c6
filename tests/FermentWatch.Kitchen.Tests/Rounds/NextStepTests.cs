using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Tests.Doubles;
using FermentWatch.Kitchen.Tests.Guides;
using FermentWatch.Kitchen.Tests.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Rounds;

public class NextStepTests
{
    [Theory]
    [InlineData(8.1, "Last measured above 4.6. Measure again today. Public advice")]
    [InlineData(9.1, "Open it today")]
    public void Of_MeasuredAboveAfterAWeek_AsksAgainOnAnotherDay(double measuredOn, string step) =>
        Assert.StartsWith(step, On(9, [Make.Ph(4.8, PhMethod.Meter, measuredOn)]).Text, StringComparison.Ordinal);

    [Fact]
    public void Of_Alarm_ComesBeforeEverything()
    {
        NextStep step = On(12, [Make.Ph(3.6, PhMethod.Meter, 9), Make.Ph(3.9, PhMethod.Meter, 10), Make.Ph(4.0, PhMethod.Meter, 11)]);
        Assert.True(step.Urgent);
        Assert.StartsWith("The pH is rising", step.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(SightingKind.FuzzOrUnsure, true)]
    [InlineData(SightingKind.Slime, true)]
    [InlineData(SightingKind.Gas, true)]
    [InlineData(SightingKind.BrineLow, true)]
    [InlineData(SightingKind.PiecesUp, false)]
    [InlineData(SightingKind.Film, false)]
    [InlineData(SightingKind.OffSmell, false)]
    [InlineData(SightingKind.Other, false)]
    public void Of_Trouble_WarnsOfMouldSlimePressureAndLostBrineOnly(SightingKind kind, bool warns)
    {
        NextStep step = On(9, [Make.Sighting(kind, 8.5)]);
        Assert.Equal(warns, step.Urgent);
        Assert.True(step.Kind < StepKind.Look);
    }

    [Fact]
    public void Of_FilmNotSeenTo_NamesWhatSettlesIt() =>
        Assert.Equal("After a flat white film: do what its guide says, then write down \"skimmed\". Nothing is forecast until it is settled, or a "
            + "pH is measured.", On(9, [Make.Sighting(SightingKind.Film, 8.5)]).Text);

    [Fact]
    public void Of_FilmSkimmed_WaitsForWellDays() =>
        Assert.Equal("Skimmed. All well on 2 days settles it. Nothing is forecast until then.",
        On(9, [Make.Sighting(SightingKind.Film, 8.1), Make.Handling(HandlingKind.Skimmed, 8.2)]).Text);

    [Theory]
    [InlineData(5)]
    [InlineData(7)]
    [InlineData(15)]
    [InlineData(21)]
    public void Of_HouseholdThatCannotMeasure_IsNeverAskedForAPh(int day)
    {
        NextStep step = On(day, [], PhTool.Nothing);
        Assert.Equal((StepKind.Look, false), (step.Kind, step.Urgent));
        Assert.DoesNotContain("pH", step.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(5, Cut.Whole, true)]
    [InlineData(7, Cut.Whole, true)]
    [InlineData(14, Cut.Whole, false)]
    [InlineData(5, Cut.Pieces, false)]
    public void Of_VinegarThatStandsInTheBrine_AsksForPiecesBlendedWithIt(int day, Cut cut, bool asks)
    {
        Jar jar = Make.Jar(1);
        jar.Cut = cut;
        Assert.DoesNotContain("vinegar", On(day, jar, null).Text, StringComparison.Ordinal);
        jar.Vinegar = new Vinegar(0.06, 5);
        Assert.Equal(asks,
            On(day, jar, null).Text.Contains("Measure the pH today. The vinegar still stands in the brine: blend", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(PhTool.Strips)]
    [InlineData(PhTool.Meter)]
    [InlineData(PhTool.Probe)]
    public void Of_WeekOverWithoutAReadingBelow_AsksCalmly(PhTool tool)
    {
        NextStep step = On(7, [], tool);
        Assert.Equal((StepKind.Measure, false), (step.Kind, step.Urgent));
        Assert.StartsWith("Day 7, and no reading below 4.6 yet. Measure the pH today. Public advice", step.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_OneCountedReading_AsksForTheSecond() =>
        Assert.Contains("two readings", On(12, [Make.Ph(3.9, PhMethod.Meter, 11)]).Text, StringComparison.Ordinal);

    [Fact]
    public void Of_SettledAndExpectedToday_AsksForATaste()
    {
        Jar jar = Settled();
        Assert.StartsWith("Taste it today", On(12, jar, Make.Forecast(jar, 10, 12, 15)).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_PastItsTastingDays_IsADecision()
    {
        Jar jar = Settled();
        NextStep step = On(20, jar, Make.Forecast(jar, 10, 12, 15));
        Assert.Equal((StepKind.Decide, false), (step.Kind, step.Urgent));
        jar.Observations.Add(Make.Handling(HandlingKind.LeftStanding, 20));
        Assert.Equal(StepKind.Look, On(20, jar, Make.Forecast(jar, 10, 12, 15)).Kind);
    }

    [Fact]
    public void Of_ThrownOut_HasNothingToDo() =>
        Assert.Equal("This jar is thrown out. Nothing to do.", On(9, [Make.Ph(4.9, PhMethod.Meter, 8), Make.Stage(JarStage.ThrownOut, 8.5)]).Text);

    [Fact]
    public void Of_DayOfPacking_AsksForNothing() => Assert.Equal("Put up today. Nothing to do before tomorrow.", On(0, []).Text);

    [Theory]
    [InlineData("cabbage", 2.4, AcidLineState.NotMeasured, 4)]
    [InlineData("beet", 2.4, AcidLineState.NotMeasured, 4)]
    [InlineData("cabbage", 2.4, AcidLineState.MeasuredBelow, 2)]
    [InlineData("cucumber", 2.4, AcidLineState.NotMeasured, 2)]
    [InlineData("cabbage", 9.9, AcidLineState.NotMeasured, 9)]
    [InlineData("cucumber", 0.2, AcidLineState.NotMeasured, 1)]
    public void From_ByProduceAndReading_HoldsJarsRichInNitrateBack(string produce, double expectedDay, AcidLineState state, int first) =>
        Assert.Equal(Packed.PlusDays(first), From(produce, new PassageDays(expectedDay - 2, expectedDay, expectedDay + 5), state));

    [Fact]
    public void From_TargetBeyondTheSpan_IsAboutAWeek() =>
        Assert.Equal(Packed.PlusDays(7), From("carrot", new PassageDays(null, null, null), AcidLineState.NotMeasured));

    [Fact]
    public void Words_FirstTasteAhead_NamesTheDay()
    {
        var today = new LocalDate(2026, 10, 5);
        Assert.Equal("First taste Thursday, then until it is right.", Tasting.Words(today.PlusDays(3), today));
        Assert.StartsWith("Worth tasting now", Tasting.Words(today, today), StringComparison.Ordinal);
    }

    private static LocalDate Packed => SampleJars.Packed.InZone(SampleJars.Vienna).Date;

    private static LocalDate From(string produce, PassageDays target, AcidLineState state) =>
        Tasting.From(SampleJars.Of(produce), EarlyNitriteTests.BelowOnDayFour(target), SampleJars.Vienna, state);

    private static Jar Settled() =>
        Make.Jar(1, seen: [Make.Ph(3.9, PhMethod.Meter, 8), Make.Ph(3.8, PhMethod.Meter, 9), Make.Ph(3.8, PhMethod.Meter, 19.5), Make.Look(11),
        Make.Look(19)]);

    private static NextStep On(int day, Observation[] seen, PhTool tool = PhTool.Meter) => On(day, Make.Jar(1, seen: seen), null, tool);

    private static NextStep On(int day, Jar jar, JarForecast? forecast, PhTool tool = PhTool.Meter)
    {
        Household household = Make.Household("UTC");
        household.PhTool = tool;
        var forecasts = forecast is null ? [] : new Dictionary<Guid, JarForecast> { [jar.Id] = forecast };
        LocalDate date = Make.Packed.InUtc().Date.PlusDays(day);
        var rules = new JarRules(household, forecasts, new TastingPlan([jar], forecasts, household, []), new HashSet<Guid>());
        return rules.On(jar, date, date.At(new LocalTime(20, 0)).InUtc().ToInstant()).Step;
    }
}
