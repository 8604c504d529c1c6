using CsCheck;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Tests.Words;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Forecasts;

public class ForecastWordsTests
{
    /// <summary>Packed on Monday 5 October 2026 at 18:00 in Vienna, looked at on the same evening.</summary>
    private static readonly ForecastCalendar Monday = new(SampleJars.Packed, 60, SampleJars.Packed + Duration.FromMinutes(5), SampleJars.Vienna);

    private static ForecastCalendar After(int days) => Monday with { Now = SampleJars.Packed + Duration.FromDays(days) };

    [Theory]
    [InlineData(2.2, 3.0, 3.9, "Probably sour enough Thursday, give or take a day; not measured.")]
    [InlineData(1.0, 3.0, 5.0, "Probably sour enough Thursday, give or take 3 days; not measured.")]
    [InlineData(6.0, 9.0, 14.0, "Probably sour enough on 14 October, give or take a week; not measured.")]
    [InlineData(12.0, 20.0, 33.0, "Probably sour enough on 25 October, give or take two weeks; not measured.")]
    [InlineData(12.0, 20.0, 45.0, "Probably sour enough on 25 October, anywhere from 17 October to 19 November; not measured.")]
    public void SourEnough_Ahead_NamesTheDayAndASpreadThatHoldsTheInterval(double p10, double p50, double p90, string expected) =>
        Assert.Equal(expected, ForecastWords.SourEnough(new(p10, p50, p90), Monday, null));

    [Fact]
    public void SourEnough_LateEndOrMedianOrAllBeyondTheSpan_SaysSoPlainly()
    {
        Assert.Equal("Probably sour enough on 14 November, from 4 November on, perhaps not before 4 December, where the forecast ends; not measured.",
            ForecastWords.SourEnough(new(30, 40, null), Monday, null));
        Assert.Equal("Probably not sour enough before 4 December, where the forecast ends; perhaps as early as 24 November; not measured.",
            ForecastWords.SourEnough(new(50, null, null), Monday, null));
        Assert.Equal("Not expected to be sour enough by 4 December, where the forecast ends; not measured.",
            ForecastWords.SourEnough(new(null, null, null), Monday, null));
    }

    [Fact]
    public void SourEnough_DayIsPast_SaysByNowAndSinceWhen() =>
        Assert.Equal("Probably sour enough by now, since 12 October, give or take 3 days; last pH 3.85 on 13 October.",
            ForecastWords.SourEnough(new(5, 7, 9), After(11), SampleJars.Ph(3.85, SampleJars.Packed + Duration.FromDays(8))));

    [Theory]
    [InlineData(5.0, 7.0, 9.0, "Probably sour enough by now; not measured.")]
    [InlineData(5.0, 7.0, 11.0, "Probably sour enough by now; not measured.")]
    [InlineData(5.0, 7.0, 15.0, "Probably sour enough by now, perhaps not before Tuesday; not measured.")]
    [InlineData(5.0, 12.0, 15.0, "Probably sour enough tomorrow, give or take a week; not measured.")]
    [InlineData(2.0, 20.0, 40.0, "Probably sour enough on 25 October, anywhere from today to 14 November; not measured.")]
    public void SourEnough_NobodyMeasured_NamesNoDateThatHasGoneBy(double p10, double p50, double p90, string expected) =>
        Assert.Equal(expected, ForecastWords.SourEnough(new(p10, p50, p90), After(11), null));

    [Theory]
    [InlineData(3.0, "Thursday")]
    [InlineData(12.0, "17 October")]
    public void SourEnoughShort_Ahead_IsTheDay(double p50, string expected) =>
        Assert.Equal(expected, ForecastWords.SourEnoughShort(new(1, p50, 30), Monday));

    [Fact]
    public void SourEnoughShort_PastOrNeverInTheSpan_SaysNowOrAfter()
    {
        Assert.Equal("now", ForecastWords.SourEnoughShort(new(1, 3, 5), After(6)));
        Assert.Equal("today", ForecastWords.SourEnoughShort(new(1, 6, 9), After(6)));
        Assert.Equal("after 4 December", ForecastWords.SourEnoughShort(new(null, null, null), Monday));
    }

    [Fact]
    public void AcidLine_Ahead_SaysTheLateEndFirst()
    {
        Assert.Equal("Expected below 4.6, nine times in ten by Saturday, perhaps as early as Wednesday; not measured.",
            ForecastWords.AcidLine(new(2, 3, 5), Monday, AcidLineState.NotMeasured, false));
        Assert.Equal("Expected below 4.6, nine times in ten by Thursday; no reading that counts yet.",
            ForecastWords.AcidLine(new(3, 3, 3), Monday, AcidLineState.NotMeasured, true));
        Assert.Equal("Expected below 4.6, nine times in ten by Thursday; last measured above.",
            ForecastWords.AcidLine(new(3, 3, 3), Monday, AcidLineState.MeasuredAbove, true));
    }

    [Fact]
    public void AcidLine_PastOrBeyondTheSpan_SaysSoPlainly()
    {
        Assert.Equal("Expected below 4.6, nine times in ten by now; not measured.",
            ForecastWords.AcidLine(new(2, 3, 5), After(12), AcidLineState.NotMeasured, false));
        Assert.Equal("Expected below 4.6, nine times in ten by 25 October, perhaps already; not measured.",
            ForecastWords.AcidLine(new(2, 3, 20), After(12), AcidLineState.NotMeasured, false));
        Assert.Equal("Expected below 4.6, nine times in ten by 25 October, perhaps as early as 7 October; no reading that counts yet.",
            ForecastWords.AcidLine(new(2, 3, 20), After(12), AcidLineState.NotMeasured, true));
        Assert.Equal("Expected below 4.6 late: perhaps not before 4 December, where the forecast ends, perhaps as early as 25 October; not measured.",
            ForecastWords.AcidLine(new(20, null, null), Monday, AcidLineState.NotMeasured, false));
        Assert.Equal("Expected below 4.6 only after 4 December, where the forecast ends, if at all; not measured.",
            ForecastWords.AcidLine(new(null, null, null), Monday, AcidLineState.NotMeasured, false));
    }

    [Fact]
    public void Sentences_NobodyMeasured_NeverNameADateThatHasGoneBy() =>
        Gen.Select(Gen.Double[0, 60], Gen.Double[0, 30], Gen.Double[0, 30], Gen.Int[0, 59]).Sample((p10, more, most, days) =>
        {
            ForecastCalendar calendar = After(days);
            var passage = new PassageDays(p10, p10 + more, p10 + more + most);
            string words = ForecastWords.SourEnough(passage, calendar, null)
                + ForecastWords.AcidLine(passage, calendar, AcidLineState.NotMeasured, false)
                + ForecastWords.AcidLineInPieces(passage, calendar, false);
            for (LocalDate gone = calendar.Today.PlusDays(-days); gone < calendar.Today; gone = gone.PlusDays(1))
                if (words.Contains($" {DateWords.Name(gone, calendar.Today)}", StringComparison.Ordinal))
                    return false;
            return true;
        });

    [Fact]
    public void GiveOrTake_AnyInterval_IsNeverNarrowerThanTheInterval() =>
        Gen.Select(Gen.Int[0, 40], Gen.Int[0, 40]).Sample((before, after) =>
        {
            LocalDate today = new(2026, 10, 5), middle = today.PlusDays(50);
            string words = ForecastWords.GiveOrTake(middle.PlusDays(-before), middle, middle.PlusDays(after), today);
            int holds = words switch
            {
                "give or take a day" => 1, "give or take 3 days" => 3, "give or take a week" => 7, "give or take two weeks" => 14, _ => 40,
            };
            return Math.Max(before, after) <= holds;
        });

    [Fact]
    public void Sentences_AcrossTheAutumnClockChange_KeepTheHouseholdsDates()
    {
        var calendar = new ForecastCalendar(Instant.FromUtc(2026, 10, 24, 21, 30), 60, Instant.FromUtc(2026, 10, 24, 21, 45), SampleJars.Vienna);
        Assert.Equal(new LocalDate(2026, 10, 24), calendar.Today);
        Assert.Equal(new LocalDate(2026, 10, 25), calendar.Date(1));
    }
}
