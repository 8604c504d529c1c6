using FermentWatch.Kitchen.Guides;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Labels;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Labels;

public class JarTagTests
{
    private static readonly LocalDate Given = new(2026, 12, 1);

    [Fact]
    public void EatBy_Kraut_IsFourToSixMonthsFromTheColdWithWhoSaysSo()
    {
        JarTag tag = Of(Given, Make.Stage(JarStage.Cold, 21));
        Assert.Equal((new LocalDate(2027, 2, 19), new LocalDate(2027, 4, 20)), tag.EatBy);
        Assert.Equal("Eat by 19 Feb 2027 to 20 Apr 2027. Public advice keeps it several months.", tag.EatByWords);
        Assert.StartsWith("USDA Complete Guide to Home Canning, Guide 6", tag.EatBySource, StringComparison.Ordinal);
    }

    [Fact]
    public void EatBy_GoneBy_SaysSoAndPromisesNothing()
    {
        Assert.StartsWith("Eat soon: by 20 Apr 2027 at the latest, and 19 Feb 2027 is gone by.",
            Of(new LocalDate(2027, 3, 1), Make.Stage(JarStage.Cold, 21)).EatByWords, StringComparison.Ordinal);
        Assert.StartsWith("Past the longest that is published: until 20 Apr 2027.",
            Of(new LocalDate(2027, 4, 21), Make.Stage(JarStage.Cold, 21)).EatByWords, StringComparison.Ordinal);
    }

    [Fact]
    public void EatBy_NeverInTheCold_CountsFromTheDayItIsGiven()
    {
        JarTag tag = Of(Given);
        Assert.Equal(Given.PlusDays(120), tag.EatBy?.Least);
        Assert.Contains("if it goes into the cold today", tag.EatByWords, StringComparison.Ordinal);
        Assert.Equal("packed 1 Oct 2026, not in the cold yet", tag.Dates);
    }

    [Fact]
    public void EatBy_WasFrozen_NamesNoDayAndSaysThatNoneIsPublished()
    {
        JarTag tag = Of(Given, Make.Stage(JarStage.Cold, 21), Make.Went(Destination.Frozen, 40), Make.Went(Destination.GivenAway, 61, "Ash"));
        Assert.Null(tag.EatBy);
        Assert.Equal("How long it keeps after freezing is not published as far as we know: keep it cold and eat it soon.", tag.EatByWords);
        Assert.Equal("common practice, no source", tag.EatBySource);
        Assert.Equal("packed 1 Oct 2026, in the cold since 22 Oct 2026, frozen on 10 Nov 2026", tag.Dates);
    }

    [Fact]
    public void Tag_OpenJarWithCelery_SaysWhatIsInItSinceWhenItIsOpenAndHowToKeepIt()
    {
        Jar jar = Make.Jar(4, seen: [Make.Stage(JarStage.Cold, 21), Make.Portion(30, 0.5)]);
        jar.Portions = [new Portion("cabbage", 0.8), new Portion("celery", 0.1)];
        var tag = new JarTag(jar, Make.Household("UTC"), Given);
        Assert.Equal("cabbage 800 g, celery 100 g; 2.25 % salt", tag.Contents);
        Assert.Equal(["celery"], tag.Contains);
        Assert.Equal("packed 1 Oct 2026, in the cold since 22 Oct 2026, open since 31 Oct 2026, about half left", tag.Dates);
        Assert.StartsWith("Keep cold, at 4 °C (40 °F) or below.", tag.Keep, StringComparison.Ordinal);
        Assert.Contains("An open jar comes first", tag.Keep, StringComparison.Ordinal);
        Assert.StartsWith("Acid line: not measured. Not measured is neither fine nor a reason to discard.", tag.Line, StringComparison.Ordinal);
        Assert.Contains(Cautions.LocalGuidanceFirst, JarTag.Cautions);
        Assert.Contains(Cautions.VulnerablePeople, JarTag.Cautions);
    }

    private static JarTag Of(LocalDate today, params Observation[] seen) => new(Make.Jar(1, seen: seen), Make.Household("UTC"), today);
}
