using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Tests.Doubles;

namespace FermentWatch.Kitchen.Tests.Occasions;

public class TroubleAndStoreOccasionsTests
{
    private static readonly Member Child = new("Mira", MemberRole.Child, new Duty { Person = "Mira" });

    [Fact]
    public void Of_AdultSeesFilm_TellsTheOthersToWatch()
    {
        Occasion occasion = Assert.Single(TroubleOccasions.Of(SceneOf.Day(4, SceneOf.Evening, [Make.Jar(3, seen: Make.Sighting(SightingKind.Film, 4))])));
        Assert.Equal((OccasionKind.CloserWatch, "Mira"), (occasion.Kind, occasion.KnownTo));
    }

    [Fact]
    public void Of_ChildSeesFilm_AsksAnAdult()
    {
        Occasion occasion = Assert.Single(TroubleOccasions.Of(SceneOf.Day(4, SceneOf.Evening, [Make.Jar(3, seen: Make.Sighting(SightingKind.Film, 4))], members: [Child])));
        Assert.Equal((OccasionKind.AdultAsked, null), (occasion.Kind, occasion.KnownTo));
    }

    [Fact]
    public void Of_Gas_IsNoTrouble() =>
        Assert.Empty(TroubleOccasions.Of(SceneOf.Day(4, SceneOf.Evening, [Make.Jar(3, seen: Make.Sighting(SightingKind.Gas, 4))])));

    [Theory]
    [InlineData(20, true)]
    [InlineData(21, false)]
    public void Of_ChilledOnADay_IsEarlyBeforeThreeWeeks(int day, bool early) =>
        Assert.Equal(early, SceneOf.Kinds(SceneOf.Day(day, SceneOf.Evening, [Make.Jar(1, seen: Make.Stage(JarStage.Cold, day))])).Contains(OccasionKind.EarlyChilling));

    [Theory]
    [InlineData(149, false)]
    [InlineData(150, true)]
    public void Of_ChilledOnDay30_IsToBeEatenFirstFourMonthsLater(int day, bool first) =>
        Assert.Equal(first, SceneOf.Kinds(SceneOf.Day(day, SceneOf.Morning, [Make.Jar(1, seen: Make.Stage(JarStage.Cold, 30))])).Contains(OccasionKind.EatFirst));
}
