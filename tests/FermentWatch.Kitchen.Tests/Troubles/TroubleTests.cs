using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Tests.Doubles;
using FermentWatch.Kitchen.Troubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Troubles;

public class TroubleTests
{
    [Theory]
    [InlineData(SightingKind.Film, true)]
    [InlineData(SightingKind.FuzzOrUnsure, true)]
    [InlineData(SightingKind.Slime, true)]
    [InlineData(SightingKind.PiecesUp, true)]
    [InlineData(SightingKind.BrineLow, true)]
    [InlineData(SightingKind.OffSmell, true)]
    [InlineData(SightingKind.Gas, false)]
    [InlineData(SightingKind.Other, false)]
    public void Of_Sighting_WithdrawsTheForecastOrNot(SightingKind kind, bool withdrawn) =>
        Assert.Equal(withdrawn, State(Make.Sighting(kind, 4)).ForecastWithdrawn);

    [Fact]
    public void Of_MeasuredAfterwards_TheForecastIsBackAndTheWatchStays()
    {
        TroubleState state = State(Make.Sighting(SightingKind.Film, 4), Make.Ph(4.1, PhMethod.Meter, 4.5));
        Assert.Equal((false, true), (state.ForecastWithdrawn, state.CloserWatch));
    }

    [Fact]
    public void Of_MeasuredBefore_DoesNotBringTheForecastBack() =>
        Assert.True(State(Make.Ph(4.1, PhMethod.Meter, 3), Make.Sighting(SightingKind.Film, 4)).ForecastWithdrawn);

    [Fact]
    public void Of_ThreeWellDays_EndTheWatch()
    {
        Assert.True(State(Make.Sighting(SightingKind.Film, 4), Make.Look(5), Make.Look(6)).CloserWatch);
        Assert.False(State(Make.Sighting(SightingKind.Film, 4), Make.Look(5), Make.Look(6), Make.Look(7)).CloserWatch);
    }

    private static TroubleState State(params Observation[] seen) => Trouble.Of(Make.Jar(1, seen: seen), DateTimeZone.Utc);
}
