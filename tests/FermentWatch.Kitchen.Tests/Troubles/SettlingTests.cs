using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Tests.Doubles;
using FermentWatch.Kitchen.Troubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Troubles;

public class SettlingTests
{
    [Theory]
    [InlineData(SightingKind.PiecesUp, HandlingKind.PressedUnder)]
    [InlineData(SightingKind.Film, HandlingKind.Skimmed)]
    [InlineData(SightingKind.BrineLow, HandlingKind.BrineToppedUp)]
    public void Of_SeenToAndWellOnTwoDays_IsSettledAndTheForecastIsBackWider(SightingKind kind, HandlingKind done)
    {
        Jar jar = Make.Jar(1, seen: [Make.Sighting(kind, 4), Make.Handling(done, 4.1), Make.Look(5)]);
        Assert.Equal((true, true, 1), Seen(jar));
        jar.Observations.Add(Make.Look(6));
        Assert.Equal((false, false, 0), Seen(jar));
        Assert.Equal(done, Remedies.Widening(jar)?.Kind);
        jar.Observations.Add(Make.Ph(3.9, PhMethod.Meter, 7));
        Assert.Null(Remedies.Widening(jar));
    }

    [Theory]
    [InlineData(SightingKind.FuzzOrUnsure)]
    [InlineData(SightingKind.Slime)]
    [InlineData(SightingKind.OffSmell)]
    public void Of_MouldSlimeOrSmell_StaysWithdrawnUntilMeasuredWhateverWasDone(SightingKind kind)
    {
        Jar jar = Make.Jar(1, seen: [Make.Sighting(kind, 4), .. Enum.GetValues<HandlingKind>().Select(done => Make.Handling(done, 4.1)),
            Make.Look(5), Make.Look(6), Make.Look(7)]);
        Assert.True(Trouble.Of(jar, DateTimeZone.Utc).ForecastWithdrawn);
        Assert.Null(Trouble.Of(jar, DateTimeZone.Utc).Remedy);
        jar.Observations.Add(Make.Ph(3.9, PhMethod.Meter, 8));
        Assert.False(Trouble.Of(jar, DateTimeZone.Utc).ForecastWithdrawn);
    }

    [Fact]
    public void Of_LooksOfTheSameDay_SettleNothing() =>
        Assert.Equal((true, true, 2),
        Seen(Make.Jar(1, seen: [Make.Sighting(SightingKind.Film, 4), Make.Handling(HandlingKind.Skimmed, 4.05), Make.Look(4.1)])));

    [Fact]
    public void Of_AnotherRemedyOrOneBefore_SettlesNothing()
    {
        Jar jar = Make.Jar(1,
            seen: [Make.Handling(HandlingKind.Skimmed, 3), Make.Sighting(SightingKind.Film, 4), Make.Handling(HandlingKind.PressedUnder, 5),
            Make.Look(6), Make.Look(7), Make.Look(8)]);
        Assert.True(Trouble.Of(jar, DateTimeZone.Utc).ForecastWithdrawn);
    }

    [Fact]
    public void Of_FilmSettledBesideMould_ShowsTheMould()
    {
        Jar jar = Make.Jar(1,
            seen: [Make.Sighting(SightingKind.FuzzOrUnsure, 4), Make.Sighting(SightingKind.Film, 4.1), Make.Handling(HandlingKind.Skimmed, 4.2),
            Make.Look(5), Make.Look(6)]);
        Assert.Equal((SightingKind.FuzzOrUnsure, true),
            (Trouble.Of(jar, DateTimeZone.Utc).Last!.Kind, Trouble.Of(jar, DateTimeZone.Utc).ForecastWithdrawn));
    }

    [Fact]
    public void Of_TakenBack_TheTroubleIsOpenAgain()
    {
        Jar jar = Make.Jar(1, seen: [Make.Sighting(SightingKind.Film, 4), Make.Handling(HandlingKind.Skimmed, 4.1), Make.Look(5), Make.Look(6)]);
        jar.Observations.OfType<Handling>().Single().VoidedAt = Make.Day(6.5);
        Assert.Equal((true, true, 0), Seen(jar));
    }

    [Fact]
    public void Of_Pressure_EndsWithGasLetOutOrAWellLook()
    {
        Jar jar = Make.Jar(1, seen: [Make.Sighting(SightingKind.Gas, 4)]);
        TroubleState open = Trouble.Of(jar, DateTimeZone.Utc);
        Assert.Equal((true, HandlingKind.GasLetOut, false), (open.Pressure is not null, open.Remedy, open.ForecastWithdrawn));
        jar.Observations.Add(Make.Handling(HandlingKind.GasLetOut, 4.1));
        Assert.Null(Trouble.Of(jar, DateTimeZone.Utc).Pressure);
        Assert.Null(Trouble.Of(Make.Jar(1, seen: [Make.Sighting(SightingKind.Gas, 4), Make.Look(5)]), DateTimeZone.Utc).Pressure);
    }

    [Fact]
    public void Of_RisingPh_WithdrawsTheForecastUntilOneIsMeasuredThatDoesNotRise()
    {
        Jar jar = Make.Jar(1, seen: [Make.Ph(3.6, PhMethod.Meter, 9), Make.Ph(3.9, PhMethod.Meter, 10), Make.Ph(4.0, PhMethod.Meter, 11)]);
        Assert.True(Trouble.Of(jar, DateTimeZone.Utc).ForecastWithdrawn);
        jar.Observations.Add(Make.Ph(3.6, PhMethod.Meter, 12));
        Assert.False(Trouble.Of(jar, DateTimeZone.Utc).ForecastWithdrawn);
    }

    private static (bool Withdrawn, bool Watch, int ToGo) Seen(Jar jar) => Trouble.Of(jar, DateTimeZone.Utc) is var state
        ? (state.ForecastWithdrawn, state.CloserWatch, state.WellDaysToGo) : default;
}
