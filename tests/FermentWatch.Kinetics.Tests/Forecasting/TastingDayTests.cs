using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Household;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Tests.Forecasting;

/// <summary>Tastes, gas and the household move the tasting day only.</summary>
public class TastingDayTests
{
    private static readonly ForecastRequest Plain = new()
    {
        Recipe = JarRecipe.Of(Vegetable.Of("cabbage"), Cut.Shredded, 2.25),
        Temperatures = TemperatureCourse.Constant(20),
        Days = 40,
        Target = new ForecastTarget(TargetKind.Sourness, 40),
        Household = HouseholdPrior.Unknown,
    };

    public static TheoryData<string, ForecastRequest> Extras() => new()
    {
        { "taste", Plain with { Tastes = [new TasteReading(5, TasteAnswer.Right)] } },
        { "gas", Plain with { Gas = [new GasReading(0.7, true)] } },
        { "household", Plain with { Household = HouseholdPrior.From([new JarLesson(0.2, 0.05, -0.3, 0.1)]) } },
    };

    [Theory]
    [MemberData(nameof(Extras))]
    public void Run_TasteGasOrHousehold_MovesTheTargetAndNoLine(string extra, ForecastRequest request)
    {
        Forecast before = Forecaster.Run(Plain);
        Forecast after = Forecaster.Run(request);
        Assert.True(before.Target != after.Target, extra);
        Assert.Equal(before.AcidLine, after.AcidLine);
        Assert.Equal(before.Ph4, after.Ph4);
        Assert.Equal(before.CentreAcidLine, after.CentreAcidLine);
        Assert.Equal(before.CentrePh4, after.CentrePh4);
        Assert.Equal(before.Course, after.Course);
    }

    [Fact]
    public void Run_TastedRightOnDayFive_ExpectsItEarlierAndNarrower()
    {
        PassageDays before = Forecaster.Run(Plain).Target!.Value;
        PassageDays after = Forecaster.Run(Plain with { Tastes = [new TasteReading(5, TasteAnswer.Right)] }).Target!.Value;
        Assert.True(after.P50 < before.P50);
        Assert.True(after.P90 - after.P10 < before.P90 - before.P10);
    }

    [Fact]
    public void Run_NotYetOnDayTwelve_ExpectsItLater()
    {
        PassageDays before = Forecaster.Run(Plain).Target!.Value;
        PassageDays after = Forecaster.Run(Plain with { Tastes = [new TasteReading(12, TasteAnswer.NotYet)] }).Target!.Value;
        Assert.True(after.P50 > before.P50);
    }

    [Theory]
    [InlineData(TasteAnswer.NotYet, 12, 1)]
    [InlineData(TasteAnswer.PastIt, 6, -1)]
    public void Run_AcidityTargetTasted_MovesTheDayAndNoLine(TasteAnswer said, double day, int later)
    {
        ForecastRequest request = Plain with { Target = new ForecastTarget(TargetKind.AcidityPercentLactic, 1.2), Household = null };
        Forecast before = Forecaster.Run(request);
        Forecast after = Forecaster.Run(request with { Tastes = [new TasteReading(day, said)] });
        Assert.Equal(later, Math.Sign(after.Target!.Value.P50!.Value - before.Target!.Value.P50!.Value));
        Assert.Equal(before.AcidLine, after.AcidLine);
        Assert.Equal(before.Course, after.Course);
    }

    [Fact]
    public void Run_GasAloneWithoutAHousehold_LeavesTheTargetToTheLetter()
    {
        ForecastRequest request = Plain with { Members = 1024, Target = new ForecastTarget(TargetKind.AcidityPercentLactic, 1.2), Household = null };
        PassageDays before = Forecaster.Run(request).Target!.Value;
        PassageDays after = Forecaster.Run(request with { Gas = [new GasReading(2, true)] }).Target!.Value;
        Assert.True(after.P90 - after.P10 < 1.1 * (before.P90 - before.P10), $"{after} after {before}");
    }

    [Fact]
    public void Learn_AcidityTargetTastedRightEarly_LearnsThatLessSourIsLiked()
    {
        ForecastRequest request = Plain with { Target = new ForecastTarget(TargetKind.AcidityPercentLactic, 1.5), Household = null };
        JarLesson lesson = Forecaster.Learn(request with
        {
            Readings = [new PhReading(4, 4.3, PhMethod.Meter), new PhReading(9, 3.9, PhMethod.Meter)],
            Tastes = [new TasteReading(5, TasteAnswer.Right), new TasteReading(9, TasteAnswer.PastIt)],
        });
        Assert.True(lesson.LnTasteMean < -0.1, $"{lesson}");
    }

    [Fact]
    public void Run_AcidLineAsTarget_IsMovedByNoHousehold()
    {
        ForecastRequest line = Plain with { Target = ForecastTarget.AcidLine };
        Forecast taught = Forecaster.Run(
            line with { Household = HouseholdPrior.From([new JarLesson(0.3, 0.05, 0, 0.3)]), Gas = [new GasReading(1, true)] });
        Assert.Equal(Forecaster.Run(line).Target, taught.Target);
        Assert.Equal(taught.AcidLine, taught.Target);
    }

    [Fact]
    public void Check_TastesWithoutATargetToTasteOn_AreRefused() =>
        Assert.Equal("tastes", Assert.Single((Plain with { Target = null, Tastes = [new TasteReading(5, TasteAnswer.Right)] }).Check()).Field);

    [Fact]
    public void Run_ReadingFarFromAnyMember_IsFlaggedAsWorseNewsAndBelieved()
    {
        ForecastRequest request = Plain with { Household = null, Target = null };
        Forecast before = Forecaster.Run(request);
        Forecast after = Forecaster.Run(request with { Readings = [new PhReading(6, 5.6, PhMethod.Meter)] });
        FlaggedReading flagged = Assert.Single(after.Flagged);
        Assert.True(flagged.WorseThanExpected);
        Assert.True((after.AcidLine.P50 ?? 99) > before.AcidLine.P90, $"{after.AcidLine} after {before.AcidLine}, pH {after.Course[6].Ph}");
    }

    [Fact]
    public void Run_ReadingFarTooGood_IsFlaggedAndMovesLessThanAsBadAWorseOne()
    {
        ForecastRequest request = Plain with { Household = null, Target = null };
        double expected = Forecaster.Run(request with { Days = 3 }).Course[^1].Ph.P50;
        Forecast good = Forecaster.Run(request with { Readings = [new PhReading(3, expected - 1.2, PhMethod.Meter)] });
        Forecast bad = Forecaster.Run(request with { Readings = [new PhReading(3, expected + 1.2, PhMethod.Meter)] });
        Assert.False(Assert.Single(good.Flagged).WorseThanExpected);
        Assert.True(expected - good.Course[3].Ph.P50 < bad.Course[3].Ph.P50 - expected);
    }
}
