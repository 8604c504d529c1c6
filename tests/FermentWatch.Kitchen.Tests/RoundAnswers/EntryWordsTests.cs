using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;
using TasteVerdict = FermentWatch.Kitchen.Observations.TasteVerdict;

namespace FermentWatch.Kitchen.Tests.RoundAnswers;

/// <summary>Entries, and what is answered to them: what was written down, and what it changed.</summary>
public class EntryWordsTests
{
    private static readonly LocalDate Today = Make.Day(12).InUtc().Date;

    [Theory]
    [InlineData("strip 3.9 pale", "pH 3.9 by strip, pale brine. Below the line. One more reading on another day settles it.")]
    [InlineData("strip 3.9 pale|strip 3.8 pale", "pH 3.8 by strip, pale brine. That is the second below the line, on another day: settled.")]
    [InlineData("strip 3.9 pale|strip 3.8 pale|strip 3.8 pale", "pH 3.8 by strip, pale brine. The line stays settled.")]
    [InlineData("meter 5.2", "pH 5.2 by meter, checked in buffer. That is above the line at 4.6: not acid enough yet. Measure again tomorrow.")]
    public void Of_Ph_SaysWhatItChanged(string readings, string answer)
    {
        PhMeasurement[] measured = [.. readings.Split('|').Select((typed, day) => Read(typed.Split(' '), day + 8))];
        Assert.Equal($"Written down for jar 4: {answer}", EntryWords.Of(Make.Jar(4, seen: measured), measured[^1], DateTimeZone.Utc, null, Today));
    }

    [Theory]
    [InlineData("strip 3.9 dark", "dark")]
    [InlineData("strip 4.3 pale", "strip")]
    [InlineData("meter 4.5", "tomorrow")]
    [InlineData("meter 4.1 unchecked", "buffer")]
    public void Of_PhThatDoesNotCount_SaysWhy(string typed, string why)
    {
        PhMeasurement measured = Read(typed.Split(' '), 8);
        string answer = EntryWords.Of(Make.Jar(4, seen: measured), measured, DateTimeZone.Utc, null, Today);
        Assert.Contains(why, answer[answer.IndexOf(". ", StringComparison.Ordinal)..], StringComparison.Ordinal);
        Assert.DoesNotContain("elow the line. One more", answer, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_PhThatRises_IsTheAlarm()
    {
        PhMeasurement[] measured = [Read(["meter", "3.7"], 8), Read(["meter", "4.0"], 9), Read(["meter", "4.1"], 10)];
        Assert.Contains("rising", EntryWords.Of(Make.Jar(4, seen: measured), measured[^1], DateTimeZone.Utc, null, Today), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(JarStage.Cold, 0.25, "a quarter taken out. About three quarters left. Press the rest under its brine, and back into the cold. It "
        + "comes before the closed ones.")]
    [InlineData(JarStage.Cold, 1.0, "all of it taken out. Nothing left, as reckoned. If it is empty, say so on its page.")]
    [InlineData(JarStage.Fermenting, 0.125, "an eighth taken out. Most of it left. Press the rest under its brine.")]
    public void Of_Portion_SaysWhatIsLeftAndWhatToDo(JarStage stage, double share, string answer)
    {
        PortionTaken portion = Make.Portion(30, share);
        Assert.Equal($"Written down for jar 4: {answer}",
            EntryWords.Of(Make.Jar(4, seen: [Make.Stage(stage, 20), portion]), portion, DateTimeZone.Utc, null, Today));
    }

    [Fact]
    public void Of_PortionOfAJarWithMould_SendsToLookFirst()
    {
        PortionTaken portion = Make.Portion(30, litres: 0.25);
        Assert.Equal("Written down for jar 4: 250 ml taken out. About two thirds left. Something was seen in this jar and is not settled: look at it "
            + "before anybody eats.", EntryWords.Of(Make.Jar(4, seen: [Make.Sighting(SightingKind.FuzzOrUnsure, 28), portion]), portion,
                DateTimeZone.Utc, null, Today));
    }

    [Fact]
    public void Of_StageOrTaste_SaysWhatFollows()
    {
        Observation thrown = Make.Stage(JarStage.ThrownOut, 12);
        Assert.Equal("Written down for jar 4: thrown out. It stands among the past jars, and can be reopened there.",
            EntryWords.Of(Make.Jar(4, seen: thrown), thrown, DateTimeZone.Utc, null, Today));
        var taste = new Taste { Id = Guid.NewGuid(), JarId = Guid.Empty, At = Make.Day(12), EnteredAt = Make.Day(12), By = "Mira",
            Verdict = TasteVerdict.Right };
        Assert.Equal("Written down for jar 4: tasted: right.", EntryWords.Of(Make.Jar(4, seen: taste), taste, DateTimeZone.Utc, null, Today));
    }

    [Theory]
    [InlineData(10, "tomorrow")]
    [InlineData(14, "Thursday")]
    [InlineData(19, "on 20 October")]
    public void Of_TasteThatIsNotRight_NamesTheDayOnWhichTheRoundAsksAgain(int from, string when)
    {
        Taste taste = Make.Taste(TasteVerdict.NotYet, 12);
        var ask = new TasteAsk(4, [4], Today.PlusDays(from - 12), null, SaidRight: false, TasteAskKind.Nothing);
        Assert.Equal($"Written down for jar 4: tasted: not yet. Worth tasting again {when}.",
            EntryWords.Of(Make.Jar(4, seen: taste), taste, DateTimeZone.Utc, ask, Today));
    }

    private static PhMeasurement Read(string[] typed, double day) => Make.Ph(
        double.Parse(typed[1], System.Globalization.CultureInfo.InvariantCulture), typed[0] == "strip" ? PhMethod.Strip : PhMethod.Meter, day,
        inBuffer: typed[0] == "meter" && typed is not [_, _, "unchecked"], pale: typed is [_, _, "pale"]);
}
