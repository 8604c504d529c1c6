using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Words;

namespace FermentWatch.Kitchen.Tests.Words;

/// <summary>A kind that is added without words must not reach a page.</summary>
public class WordsOfEveryKindTests
{
    [Fact]
    public void Words_EveryKind_AreThereAndTellTheKindsApart()
    {
        Check<LookFor>(LookForWords.Of);
        Check<Verdict>(ReadingWords.Of);
        Check<RejectReason>(ReadingWords.Of);
        Check<Cut>(JarWords.Of);
        Check<Cover>(JarWords.Of);
        Check<Lid>(JarWords.Of);
        Check<Warmth>(warmth => WarmthClasses.Words(warmth, SampleJars.Of("cabbage")));
        Check<Warmth>(warmth => WarmthClasses.Words(warmth, SampleJars.Of("carrot")));
    }

    [Fact]
    public void Words_OfWarmth_TellTheWeeksOfKrautOfKrautOnly() =>
        Assert.Equal((2, 0), (Enum.GetValues<Warmth>()
            .Count(each => WarmthClasses.Words(each, SampleJars.Of("cabbage")).Contains("Kraut", StringComparison.Ordinal)),
            Enum.GetValues<Warmth>().Count(each => WarmthClasses.Words(each, SampleJars.Of("carrot")).Contains("Kraut", StringComparison.Ordinal))));

    [Fact]
    public void Words_OfCold_NeverSayOfNapaAndDaikonThatTheyMayNotStart()
    {
        Assert.Contains("may not start", WarmthClasses.Words(Warmth.Cold, SampleJars.Of("cabbage")), StringComparison.Ordinal);
        Assert.All(["napa", "daikon", "radish"], produce =>
            Assert.DoesNotContain("may not", WarmthClasses.Words(Warmth.Cold, SampleJars.Of(produce)), StringComparison.Ordinal));
    }

    [Fact]
    public void InBrief_LookThroughTheGlass_NeedsNoWord() =>
        Assert.Equal([LookFor.LetGasOut, LookFor.OpenForSurface, LookFor.Taste, LookFor.MeasurePh, LookFor.Decide],
            Enum.GetValues<LookFor>().Where(each => LookForWords.InBrief(each) is not null));

    private static void Check<T>(Func<T, string> words) where T : struct, Enum
    {
        string[] all = [.. Enum.GetValues<T>().Select(words)];
        Assert.All(all, Assert.NotEmpty);
        Assert.Equal(all.Length, all.Distinct().Count());
    }
}
