using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Rounds;

public class RoundPlanTests
{
    private static readonly LocalDate PackedOn = new(2026, 10, 1);

    [Fact]
    public void Of_DayTwo_IsALookThroughTheGlass()
    {
        RoundJar jar = OnDay(2, Make.Jar(1));
        Assert.Equal([LookFor.BrineOverSolids, LookFor.LeafUnder, LookFor.NothingUp, LookFor.Bubbles, LookFor.TrayUnder], jar.LookFors);
        Assert.False(jar.Opening);
    }

    [Theory]
    [InlineData(2, false)]
    [InlineData(3, true)]
    [InlineData(4, false)]
    [InlineData(6, true)]
    public void Of_EveryThirdDay_IsOpened(int day, bool opened) =>
        // Checking 2 to 3 times a week: USDA Complete Guide to Home Canning, Guide 6.
        Assert.Equal(opened, OnDay(day, Make.Jar(1)).LookFors.Contains(LookFor.OpenForSurface));

    [Fact]
    public void Of_BrineBag_IsLeftAloneUntilTheBubblingStops()
    {
        Assert.DoesNotContain(LookFor.OpenForSurface, OnDay(6, Make.Jar(1, cover: Cover.BrineBag)).LookFors);
        Assert.Contains(LookFor.OpenForSurface, OnDay(12, Make.Jar(1, cover: Cover.BrineBag)).LookFors);
    }

    [Fact]
    public void Of_OnlyTightLids_LetGasOut()
    {
        Assert.Contains(LookFor.LetGasOut, OnDay(4, Make.Jar(1, lid: Lid.Tight)).LookFors);
        Assert.DoesNotContain(LookFor.LetGasOut, OnDay(4, Make.Jar(1)).LookFors);
    }

    [Fact]
    public void Of_SevenDaysWithoutAReadingBelowTheLine_AsksToMeasure()
    {
        Assert.Contains(LookFor.MeasurePh, OnDay(7, Make.Jar(1)).LookFors);
        Assert.DoesNotContain(LookFor.MeasurePh,
            OnDay(7, Make.Jar(1, seen: [Make.Ph(4.1, PhMethod.Meter, 5), Make.Ph(4.1, PhMethod.Meter, 6)])).LookFors);
    }

    [Fact]
    public void Of_Film_PutsTheJarOnTheCloserWatchAndAsksForAMeasurement()
    {
        RoundJar jar = OnDay(8, Make.Jar(1, seen: Make.Sighting(SightingKind.Film, 6)));
        Assert.Equal(SightingKind.Film, jar.Trouble?.Kind);
        Assert.Contains(LookFor.MeasurePh, jar.LookFors);
        Assert.Contains(LookFor.OpenForSurface, jar.LookFors);
        Assert.DoesNotContain(LookFor.Taste, jar.LookFors);
    }

    [Fact]
    public void Of_DaysWithoutAnAnswer_AreCounted()
    {
        Assert.Equal(0, OnDay(1, Make.Jar(1)).DaysNotLookedAt);
        Assert.Equal(2, OnDay(3, Make.Jar(1)).DaysNotLookedAt);
        Assert.Equal(1, OnDay(3, Make.Jar(1, seen: Make.Look(1))).DaysNotLookedAt);
        Assert.True(OnDay(3, Make.Jar(1, seen: Make.Look(2.8))).LookedAtToday);
    }

    [Fact]
    public void Of_JarsByShelf_InShelfOrder()
    {
        RoundSheet sheet = Sheet(3, Make.Jar(4, Make.Cellar), Make.Jar(2), Make.Jar(1));
        Assert.Equal(["Counter: 1, 2", "Cellar: 4"],
            sheet.Shelves.Select(shelf => $"{shelf.Place.Name}: {NumberList.Say(shelf.Jars.Select(each => each.Jar.Number))}"));
    }

    private static RoundJar OnDay(int day, Jar jar) => Sheet(day, jar).Jars.Single();

    private static RoundSheet Sheet(int day, params Jar[] jars)
    {
        var places = new[] { Make.Counter, Make.Cellar }.ToDictionary(place => place.Id);
        LocalDate date = PackedOn.PlusDays(day);
        Instant dueAt = date.At(new LocalTime(20, 0)).InUtc().ToInstant();
        return new RoundPlan(places, new Dictionary<Guid, JarForecast>(), Make.Household("UTC"), [], new HashSet<Guid>(), Make.SetAside()
            .Begin("round")).Of(date, dueAt, jars);
    }
}
