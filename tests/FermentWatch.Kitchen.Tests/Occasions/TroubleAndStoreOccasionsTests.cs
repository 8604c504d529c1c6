using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Households;
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
        Occasion occasion = Assert.Single(
            TroubleOccasions.Of(FactsOf.Day(4, FactsOf.Evening, [Make.Jar(3, seen: Make.Sighting(SightingKind.Film, 4))])));
        Assert.Equal((OccasionKind.CloserWatch, "Mira"), (occasion.Kind, occasion.KnownTo));
    }

    [Fact]
    public void Of_ChildSeesFilm_AsksAnAdult()
    {
        Occasion occasion = Assert.Single(
            TroubleOccasions.Of(FactsOf.Day(4, FactsOf.Evening, [Make.Jar(3, seen: Make.Sighting(SightingKind.Film, 4))], members: [Child])));
        Assert.Equal((OccasionKind.AdultAsked, null), (occasion.Kind, occasion.KnownTo));
    }

    [Theory]
    [InlineData(MemberRole.Adult, OccasionKind.CloserWatch)]
    [InlineData(MemberRole.Child, OccasionKind.AdultAsked)]
    public void Of_SeenByAGuestNamedLikeAnAdult_GoesByWhatWhoSawItWasAndNotByTheName(MemberRole seenAs, OccasionKind told)
    {
        var seen = new Sighting { Id = Guid.NewGuid(), JarId = Guid.Empty, At = Make.Day(4), EnteredAt = Make.Day(4), By = "Ben (guest)",
            Kind = SightingKind.Film, SeenAs = seenAs };
        Member named = FactsOf.Adult("Ben (guest)");
        Assert.Equal(told, Assert.Single(TroubleOccasions.Of(FactsOf.Day(4, FactsOf.Evening, [Make.Jar(3, seen: seen)], members: [named]))).Kind);
    }

    [Fact]
    public void Of_Gas_IsNoTrouble() =>
        Assert.Empty(TroubleOccasions.Of(FactsOf.Day(4, FactsOf.Evening, [Make.Jar(3, seen: Make.Sighting(SightingKind.Gas, 4))])));

    [Theory]
    [InlineData(20, true)]
    [InlineData(21, false)]
    public void Of_ChilledOnADay_IsEarlyBeforeThreeWeeks(int day, bool early) =>
        Assert.Equal(early, FactsOf.Kinds(FactsOf.Day(day, FactsOf.Evening, [Make.Jar(1, seen: Make.Stage(JarStage.Cold, day))]))
            .Contains(OccasionKind.EarlyChilling));

    [Theory]
    [InlineData("red cabbage", true,
        "Measured below 4.6, yet cold slows the dying of germs; public advice lets kraut work 3 to 6 weeks. Leave it out longer if you like.")]
    [InlineData("carrot", true,
        "Measured below 4.6, yet cold slows the dying of germs; no tested recipe for carrot is known here. Leave it out longer if you like.")]
    [InlineData("napa", true, null)]
    [InlineData("napa", false, "No reading below 4.6 counts. Published for kimchi: 1 to 2 days in the room or 3 to 4 in the refrigerator, and pH "
        + "4.6 or below before it is eaten. Measure it.")]
    public void Of_ChilledOnDay6_QuotesWhatIsPublishedOfItsOwnVegetable(string vegetable, bool measured, string? said)
    {
        Jar jar = Make.Jar(1, seen: Make.Stage(JarStage.Cold, 6));
        jar.Portions = [new Portion(vegetable, 0.8)];
        if (measured)
            jar.Observations.Add(Make.Ph(4.0, PhMethod.Meter, 5));
        Assert.Equal(said, StoreOccasions.Of(FactsOf.Day(6, FactsOf.Evening, [jar])).SingleOrDefault()?.Body);
    }

    [Theory]
    [InlineData(149, false)]
    [InlineData(150, true)]
    public void Of_ChilledOnDay30_IsToBeEatenFirstFourMonthsLater(int day, bool first) =>
        Assert.Equal(first, FactsOf.Kinds(FactsOf.Day(day, FactsOf.Morning, [Make.Jar(1, seen: Make.Stage(JarStage.Cold, 30))]))
            .Contains(OccasionKind.EatFirst));
}
