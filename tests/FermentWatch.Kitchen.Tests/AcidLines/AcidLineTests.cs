using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.AcidLines;

/// <summary>What counts by method: 21 CFR 114.80 (above pH 4.0 only a meter counts); the margins are this project's own.</summary>
public class AcidLineTests
{
    [Theory]
    [InlineData(4.4, PhMethod.Meter, true, true, LineEvidence.CountsBelow)]
    [InlineData(4.41, PhMethod.Meter, true, true, LineEvidence.TooNear)]
    [InlineData(4.6, PhMethod.Meter, true, true, LineEvidence.TooNear)]
    [InlineData(4.61, PhMethod.Meter, true, true, LineEvidence.CountsAbove)]
    [InlineData(4.61, PhMethod.Meter, false, true, LineEvidence.CountsAbove)]
    [InlineData(3.9, PhMethod.Meter, false, true, LineEvidence.MeterNotChecked)]
    [InlineData(3.9, PhMethod.Probe, true, true, LineEvidence.CountsBelow)]
    [InlineData(4.0, PhMethod.Strip, false, true, LineEvidence.CountsBelow)]
    [InlineData(4.1, PhMethod.Strip, false, true, LineEvidence.StripTooHigh)]
    [InlineData(3.6, PhMethod.Strip, false, false, LineEvidence.StripInDarkBrine)]
    [InlineData(5.0, PhMethod.Strip, false, false, LineEvidence.CountsAbove)]
    public void Weigh_ByMethodAndValue(double ph, PhMethod method, bool inBuffer, bool pale, LineEvidence expected) =>
        Assert.Equal(expected, AcidLine.Weigh(Make.Jar(1), Make.Ph(ph, method, 5, inBuffer, pale)));

    [Fact]
    public void Report_NothingCounted_IsNotMeasured()
    {
        AcidLineReport report = Report(Make.Ph(4.5, PhMethod.Meter, 4), Make.Ph(4.2, PhMethod.Strip, 5));
        Assert.Equal((AcidLineState.NotMeasured, false, AcidLineAlarm.None), (report.State, report.Settled, report.Alarm));
    }

    [Fact]
    public void Report_TwoCountedDays_IsSettled()
    {
        Assert.False(Report(Make.Ph(4.1, PhMethod.Meter, 6), Make.Ph(4.0, PhMethod.Meter, 6.01)).Settled);
        Assert.True(Report(Make.Ph(4.1, PhMethod.Meter, 6), Make.Ph(4.0, PhMethod.Meter, 7)).Settled);
    }

    [Fact]
    public void Report_BackAboveTheLine_IsAnAlarmAndNoLongerBelow()
    {
        AcidLineReport report = Report(Make.Ph(4.1, PhMethod.Meter, 6), Make.Ph(4.0, PhMethod.Meter, 8), Make.Ph(4.8, PhMethod.Meter, 20));
        Assert.Equal((AcidLineState.MeasuredAbove, false, AcidLineAlarm.BackAbove), (report.State, report.Settled, report.Alarm));
    }

    [Fact]
    public void Report_RiseByTheSameMethod_AsksFirstAndThenAlarms()
    {
        PhMeasurement[] first = [Make.Ph(3.6, PhMethod.Meter, 10), Make.Ph(3.81, PhMethod.Meter, 20)];
        Assert.Equal(AcidLineAlarm.RiseToRecheck, Report(first).Alarm);
        Assert.Equal(AcidLineAlarm.Rise, Report([.. first, Make.Ph(3.85, PhMethod.Meter, 20.1)]).Alarm);
        Assert.Equal(AcidLineAlarm.None, Report([.. first, Make.Ph(3.62, PhMethod.Meter, 20.1)]).Alarm);
    }

    [Fact]
    public void Report_OtherMethod_IsNoRise() =>
        Assert.Equal(AcidLineAlarm.None, Report(Make.Ph(3.6, PhMethod.Meter, 10), Make.Ph(4.0, PhMethod.Strip, 11)).Alarm);

    [Fact]
    public void Sentence_MeasuredBelow_SaysWhatTheLineCoversAndNoMore() =>
        Assert.Equal(
            "Measured 3.9 by meter on 7 October. One more reading on another day settles it. Below 4.6 the botulism germ does not grow. "
            + "This does not show that other germs are gone, or that mould or spoilage is harmless.",
            AcidLineWords.Sentence(Doubles.Make.Jar(1), Report(Make.Ph(3.9, PhMethod.Meter, 6)), DateTimeZone.Utc));

    [Theory]
    [InlineData(false, false, false, true,
        "Measured 3.9 by meter on 9 October. Pieces blended with their brine, measured, settle it: in them the acid comes last.")]
    [InlineData(false, true, true, false, "Measured 3.9 by meter on 9 October.")]
    [InlineData(true, false, true, false, "Measured 3.9 by meter on 9 October.")]
    public void Report_InPieces_IsSettledByAReadingOfABlendAmongTheTwoOnly(bool firstBlended, bool secondBlended, bool settled, bool awaits,
        string sentence)
    {
        Jar jar = Doubles.Make.Jar(1,
            seen: [Make.Ph(4.0, PhMethod.Meter, 6, blended: firstBlended), Make.Ph(3.9, PhMethod.Meter, 8, blended: secondBlended)]);
        jar.Cut = Cut.Whole;
        AcidLineReport report = AcidLine.Report(jar, DateTimeZone.Utc);
        Assert.Equal((settled, awaits), (report.Settled, report.AwaitsBlended));
        Assert.StartsWith(sentence, AcidLineWords.Sentence(jar, report, DateTimeZone.Utc), StringComparison.Ordinal);
        jar.Cut = Cut.Shredded;
        Assert.True(AcidLine.Report(jar, DateTimeZone.Utc).Settled);
    }

    [Fact]
    public void Report_BlendAfterBrine_IsNoRise()
    {
        Assert.Equal(AcidLineAlarm.None,
            Report(Make.Ph(3.7, PhMethod.Meter, 6), Make.Ph(4.1, PhMethod.Meter, 6.1, blended: true), Make.Ph(3.7, PhMethod.Meter, 7)).Alarm);
        Assert.Equal(AcidLineAlarm.RiseToRecheck, Report(Make.Ph(3.7, PhMethod.Meter, 6), Make.Ph(4.1, PhMethod.Meter, 6.1)).Alarm);
    }

    // 21 CFR 114.90: pH is measured between 20 and 30 C.
    [Theory]
    [InlineData(null, LineEvidence.CountsBelow)]
    [InlineData(20.0, LineEvidence.CountsBelow)]
    [InlineData(30.0, LineEvidence.CountsBelow)]
    [InlineData(19.9, LineEvidence.SampleTooColdOrWarm)]
    [InlineData(30.1, LineEvidence.SampleTooColdOrWarm)]
    public void Weigh_SampleBetween20And30_CountsAndNoOther(double? celsius, LineEvidence expected) =>
        Assert.Equal(expected, AcidLine.Weigh(Doubles.Make.Jar(1), Make.Ph(3.9, PhMethod.Meter, 5, celsius: celsius)));

    [Fact]
    public void Weigh_ColdSampleAboveTheLine_CountsAsBadNews() =>
        Assert.Equal(LineEvidence.CountsAbove, AcidLine.Weigh(Doubles.Make.Jar(1), Make.Ph(4.7, PhMethod.Meter, 5, celsius: 4)));

    [Fact]
    public void Report_SecondReadingOfAColdSample_SettlesNothingAndSaysWhy()
    {
        PhMeasurement cold = Make.Ph(3.8, PhMethod.Meter, 7, celsius: 6);
        AcidLineReport report = Report(Make.Ph(3.9, PhMethod.Meter, 6), cold);
        Assert.False(report.Settled);
        Assert.Contains("between 20 and 30", AcidLineWords.WhyNot(AcidLine.Weigh(Doubles.Make.Jar(1), cold)), StringComparison.Ordinal);
        Assert.True(Report(Make.Ph(3.9, PhMethod.Meter, 6), Make.Ph(3.8, PhMethod.Meter, 7, celsius: 21)).Settled);
    }

    [Fact]
    public void Report_VinegarBrineThatEvensOut_IsNoAlarmAndNotBelowYet()
    {
        Jar pickles = Pickles(new Vinegar(0.06, 5), Make.Ph(3.1, PhMethod.Meter, 0.1), Make.Ph(3.7, PhMethod.Meter, 3),
            Make.Ph(3.9, PhMethod.Meter, 5));
        Assert.Equal((AcidLineState.NotMeasured, AcidLineAlarm.None), Of(pickles));
        Assert.Contains("vinegar still stands in the brine",
            AcidLineWords.WhyNot(AcidLine.Weigh(pickles, pickles.Observations.OfType<PhMeasurement>().First())), StringComparison.Ordinal);
        pickles.Observations.Add(Make.Ph(3.8, PhMethod.Meter, 9.1));
        Assert.Equal((AcidLineState.MeasuredBelow, AcidLineAlarm.None), Of(pickles));
        pickles.Observations.Add(Make.Ph(4.1, PhMethod.Meter, 12));
        Assert.Equal(AcidLineAlarm.RiseToRecheck, Of(pickles).Alarm);
    }

    [Fact]
    public void Report_VinegarBrineBlended_CountsAtOnce() =>
        Assert.Equal((AcidLineState.MeasuredBelow, AcidLineAlarm.None),
        Of(Pickles(new Vinegar(0.06, 5), Make.Ph(3.9, PhMethod.Meter, 3, blended: true))));

    [Fact]
    public void Report_TheSameReadingsWithoutVinegar_AreAnAlarm() =>
        Assert.Equal(AcidLineAlarm.Rise,
        Of(Pickles(null, Make.Ph(3.1, PhMethod.Meter, 0.1), Make.Ph(3.7, PhMethod.Meter, 3), Make.Ph(3.9, PhMethod.Meter, 5))).Alarm);

    [Fact]
    public void Report_VinegarBrineMeasuredAboveTheLine_IsAboveWhateverStillEvensOut() =>
        Assert.Equal(AcidLineState.MeasuredAbove,
        Of(Pickles(new Vinegar(0.06, 5), Make.Ph(3.1, PhMethod.Meter, 0.1), Make.Ph(4.8, PhMethod.Meter, 3))).State);

    private static (AcidLineState State, AcidLineAlarm Alarm) Of(Jar jar)
    {
        AcidLineReport report = AcidLine.Report(jar, DateTimeZone.Utc);
        return (report.State, report.Alarm);
    }

    private static Jar Pickles(Vinegar? vinegar, params PhMeasurement[] seen)
    {
        Jar jar = Doubles.Make.Jar(1, seen: seen);
        jar.Cut = Cut.Whole;
        jar.Vinegar = vinegar;
        return jar;
    }

    [Fact]
    public void Sentence_NotMeasured_IsNeitherFineNorDiscard() =>
        Assert.StartsWith("Acid line: not measured. Not measured is neither fine nor a reason to discard.",
            AcidLineWords.Sentence(Doubles.Make.Jar(1), Report(), DateTimeZone.Utc), StringComparison.Ordinal);

    private static AcidLineReport Report(params PhMeasurement[] measurements) => AcidLine.Report(Make.Jar(1), measurements, DateTimeZone.Utc);
}
