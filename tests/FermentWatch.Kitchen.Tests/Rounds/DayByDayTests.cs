using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Tests.Words;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Rounds;

public class DayByDayTests
{
    [Theory]
    [InlineData(8)]
    [InlineData(17)]
    [InlineData(20)]
    [InlineData(26)]
    public void Of_AnyWarmth_HasWordsOfItsOwnForEachOfSevenDays(double celsius)
    {
        var notes = Of(SampleJars.Of("cabbage"), celsius);
        Assert.Equal([1, 2, 3, 4, 5, 6, 7], notes.Select(note => note.Day));
        Assert.Equal(new LocalDate(2026, 10, 6), notes[0].Date);
        Assert.Equal(7, notes.Select(note => note.Looks).Distinct().Count());
        Assert.All(notes, note => Assert.NotEmpty(note.Do));
    }

    [Fact]
    public void Of_WarmerKitchen_BringsTheBubblingForward()
    {
        int[] first = [.. new double[] { 8, 17, 20, 26 }
            .Select(celsius => Of(SampleJars.Of("cabbage"), celsius)
                .First(note => note.Looks.StartsWith("First bubbles", StringComparison.Ordinal)).Day)];
        Assert.Equal([5, 3, 2, 1], first);
    }

    [Fact]
    public void Of_JarThatIsNotTastedBeforeADate_SaysSoOnEachDayBeforeIt()
    {
        Jar jar = SampleJars.Of("beet");
        var notes = DayByDay.Of(jar, 20, new LocalDate(2026, 10, 9), SampleJars.Vienna);
        Assert.Equal([1, 2, 3], notes.Where(note => note.Do.EndsWith(" No tasting yet.", StringComparison.Ordinal)).Select(note => note.Day));
    }

    [Fact]
    public void Of_TightLid_LetsGasOutOnceItBubbles()
    {
        var notes = Of(SampleJars.Of("cabbage", Lid.Tight), 20);
        Assert.Equal([2, 3, 4, 5, 6, 7], notes.Where(note => note.Do.Contains("Let gas out", StringComparison.Ordinal)).Select(note => note.Day));
        Assert.DoesNotContain(Of(SampleJars.Of("cabbage"), 20), note => note.Do.Contains("gas out", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_BrineBag_IsLeftAloneUntilTheBubblingStops()
    {
        var notes = Of(SampleJars.Of("cabbage", cover: Cover.BrineBag), 20);
        Assert.Equal([1, 2, 3, 4, 5, 6], notes.Where(note => note.Do.Contains("bag alone", StringComparison.Ordinal)).Select(note => note.Day));
        Assert.DoesNotContain(notes, note => note.Do.Contains("press pieces", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_WaterSeal_ChecksTheRimOnlyUnderAWaterSeal()
    {
        Assert.Contains(Of(SampleJars.Of("carrot", Lid.WaterSealed), 20), note => note.Do.Contains("rim", StringComparison.Ordinal) && note.Day == 2);
        Assert.DoesNotContain(Of(SampleJars.Of("carrot"), 20), note => note.Do.Contains("water in the rim", StringComparison.Ordinal));
    }

    private static IReadOnlyList<DayNote> Of(Jar jar, double celsius) => DayByDay.Of(jar, celsius, new LocalDate(2026, 10, 6), SampleJars.Vienna);

    [Theory]
    [InlineData(15.5, Warmth.Cold)]
    [InlineData(15.6, Warmth.Cool)]
    [InlineData(18.3, Warmth.Usual)]
    [InlineData(23.9, Warmth.Usual)]
    [InlineData(24.0, Warmth.Warm)]
    public void WarmthOf_AtTheEdges_FollowsThePublicAdvice(double celsius, Warmth expected) =>
        Assert.Equal(expected, WarmthClasses.Of(celsius));

    [Fact]
    public void WarmthOf_NotANumber_IsRefused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => WarmthClasses.Of(double.NaN));
}
