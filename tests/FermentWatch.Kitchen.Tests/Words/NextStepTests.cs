using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Lines;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Troubles;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Words;

public class NextStepTests
{
    private static readonly AcidLineReport NotMeasured = new(AcidLineState.NotMeasured, null, false, AcidLineAlarm.None);

    private static readonly TroubleState NoTrouble = new(null, false, false);

    private static AcidLineReport Below(bool settled) => new(AcidLineState.MeasuredBelow, Jars.Ph(3.8, Jars.Packed), settled, AcidLineAlarm.None);

    private static LocalDate Packed => Day(0);

    private static LocalDate Day(int day) => Jars.Packed.InZone(Jars.Vienna).Date.PlusDays(day);

    private static LocalDate From(string produce, PassageDays target, AcidLineState state) =>
        Tasting.From(Jars.Of(produce), target, Packed.AtStartOfDayInZone(Jars.Vienna).ToInstant(), Jars.Vienna, state);

    private static ForecastCalendar On(int day) => new(Jars.Packed, 60, Jars.Packed + Duration.FromDays(day), Jars.Vienna);

    [Theory]
    [InlineData(9, "tomorrow")]
    [InlineData(8, "today")]
    public void Of_MeasuredAboveAfterAWeek_AsksAgainOnAnotherDay(int measuredOn, string again)
    {
        var above = new AcidLineReport(AcidLineState.MeasuredAbove, Jars.Ph(4.8, Jars.Packed + Duration.FromDays(measuredOn)), false, AcidLineAlarm.None);
        Assert.StartsWith($"Day 9, and measured above 4.6. Measure again {again}.", NextStep.Of(Jars.Of("cabbage"), NoTrouble, above, On(9), Day(12)).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_Alarm_ComesBeforeEverything()
    {
        NextStep step = NextStep.Of(Jars.Of("cabbage"), NoTrouble, Below(true) with { Alarm = AcidLineAlarm.Rise }, On(12), Day(6));
        Assert.True(step.Urgent);
        Assert.StartsWith("The pH is rising", step.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_TroubleUnmeasured_SendsToTheGuideAndTheMeter()
    {
        var film = new Sighting { Id = Guid.Empty, JarId = Guid.Empty, At = Jars.Packed, EnteredAt = Jars.Packed, By = "Ada", Kind = SightingKind.Film };
        NextStep step = NextStep.Of(Jars.Of("cabbage"), new TroubleState(film, true, true), NotMeasured, On(9), Day(6));
        Assert.True(step.Urgent);
        Assert.StartsWith("After a flat white film nothing is forecast until a pH is measured.", step.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(6, false)]
    [InlineData(7, true)]
    public void Of_WeekOverWithoutAReadingBelow_SaysSoFromDay7(int day, bool urgent)
    {
        NextStep step = NextStep.Of(Jars.Of("cabbage"), NoTrouble, NotMeasured, On(day), Day(9));
        Assert.Equal(urgent, step.Urgent);
        Assert.Equal(urgent, step.Text.Contains("no reading below 4.6", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_OneCountedReading_AsksForTheSecond() =>
        Assert.Contains("two readings", NextStep.Of(Jars.Of("cabbage"), NoTrouble, Below(false), On(12), Day(6)).Text, StringComparison.Ordinal);

    [Fact]
    public void Of_SettledAndDue_AsksForATaste() =>
        Assert.StartsWith("Taste it today", NextStep.Of(Jars.Of("cabbage"), NoTrouble, Below(true), On(12), Day(12)).Text, StringComparison.Ordinal);

    [Theory]
    [InlineData("cabbage", 2.4, AcidLineState.NotMeasured, 6)]
    [InlineData("cabbage", 2.4, AcidLineState.MeasuredBelow, 2)]
    [InlineData("cucumber", 2.4, AcidLineState.NotMeasured, 2)]
    [InlineData("cabbage", 9.9, AcidLineState.NotMeasured, 9)]
    public void From_ByProduceAndReading_HoldsLeafyJarsBack(string produce, double expectedDay, AcidLineState state, int first) =>
        Assert.Equal(Packed.PlusDays(first), From(produce, new PassageDays(expectedDay - 2, expectedDay, expectedDay + 5), state));

    [Fact]
    public void From_TargetBeyondTheSpan_IsAboutAWeek() =>
        Assert.Equal(Packed.PlusDays(7), From("carrot", new PassageDays(null, null, null), AcidLineState.NotMeasured));

    [Fact]
    public void Words_FirstTasteAhead_NamesTheDay()
    {
        var today = new LocalDate(2026, 10, 5);
        Assert.Equal("First taste Thursday, then daily until it is right.", Tasting.Words(today.PlusDays(3), today));
        Assert.StartsWith("Taste daily now", Tasting.Words(today, today), StringComparison.Ordinal);
    }
}
