using FermentWatch.Export.Points;
using FermentWatch.Export.Tests.Doubles;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Forwarding;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Readings;
using NodaTime;
using TasteVerdict = FermentWatch.Kitchen.Observations.TasteVerdict;

namespace FermentWatch.Export.Tests.Points;

/// <summary>The lines as others store them: a contract, never to be renamed.</summary>
public class SeriesPointsTests
{
    private static readonly Duration Day = Duration.FromDays(1);

    [Theory]
    [InlineData(Quantity.Temperature, 18.25,
        @"reading,place=kitchen\ counter,quantity=temperature,sensor=counter,site=home value=18.25 1791115200000")]
    [InlineData(Quantity.Temperature, 18, @"reading,place=kitchen\ counter,quantity=temperature,sensor=counter,site=home value=18 1791115200000")]
    [InlineData(Quantity.Temperature, -0.1 - 0.2,
        @"reading,place=kitchen\ counter,quantity=temperature,sensor=counter,site=home value=-0.30000000000000004 1791115200000")]
    [InlineData(Quantity.Ph, 4.6, @"reading,place=kitchen\ counter,quantity=ph,sensor=counter,site=home value=4.6 1791115200000")]
    [InlineData(Quantity.Millivolts, 171.5, @"reading,place=kitchen\ counter,quantity=millivolts,sensor=counter,site=home value=171.5 1791115200000")]
    [InlineData(Quantity.Humidity, 55, @"reading,place=kitchen\ counter,quantity=humidity,sensor=counter,site=home value=55 1791115200000")]
    public void Of_Reading_IsThisLine(Quantity quantity, double value, string line) =>
        Assert.Equal(line, Line(Make.Reading(1, quantity, value, Duration.Zero), Make.Sensor(1, "counter", Make.Counter.Id)));

    [Fact]
    public void Of_ReadingOfAProbeInAJar_HasThePlaceTheJarStoodInThen()
    {
        var sensor = Make.Sensor(1, "probe", jarId: Make.Jar14.Id);
        Assert.Equal(@"reading,place=kitchen\ counter,quantity=ph,sensor=probe,site=home value=4.1 1791115200005",
            Line(Make.Reading(1, Quantity.Ph, 4.1, Duration.FromMilliseconds(5)), sensor));
        Assert.Equal("reading,place=cellar,quantity=ph,sensor=probe,site=home value=4.1 1791201600000",
            Line(Make.Reading(1, Quantity.Ph, 4.1, Day), sensor));
    }

    [Fact]
    public void Of_ReadingBeforeAnybodySaidAPlace_HasNoneOfIt()
    {
        var sensor = Make.Sensor(1, "counter", Make.Counter.Id);
        Assert.Equal("reading,quantity=temperature,sensor=counter,site=home value=18 1791028800000",
            Line(Make.Reading(1, Quantity.Temperature, 18, -Day), sensor));
    }

    [Fact]
    public void Of_NamesWithSignsOfTheLineProtocol_AreEscaped()
    {
        var place = Make.Place("Ada's shelf, left = top");
        var names = new OwnerNames([Make.Sensor(1, "s", place.Id)], [], [place]);
        Assert.Equal(
            @"reading,place=Ada's\ shelf\,\ left\ \=\ top,quantity=temperature,sensor=s,site=Küche\ 9 value=18 1791115200000",
            SeriesPoints.Of(Make.Reading(1, Quantity.Temperature, 18, Duration.Zero), names, "Küche 9")!.ToLineProtocol());
    }

    [Fact]
    public void Of_OwnerThatIsNotThere_IsNull()
    {
        OwnerNames names = Make.Names(Make.Sensor(1, "probe", jarId: Guid.CreateVersion7()));
        Assert.Null(SeriesPoints.Of(Make.Reading(2, Quantity.Ph, 4, Duration.Zero), names, "home"));
        Assert.Null(SeriesPoints.Of(Make.Reading(1, Quantity.Ph, 4, Duration.Zero), names, "home"));
        Assert.Null(SeriesPoints.Of(Make.Estimate(Guid.CreateVersion7(), Make.Noon), names, "home"));
        Assert.Null(SeriesPoints.Of(
            Logged(new Look { Opened = false, Id = default, JarId = Guid.CreateVersion7(), At = Make.Noon, EnteredAt = Make.Noon, By = "Ada" }),
            names, "home"));
    }

    [Fact]
    public void Of_Estimate_IsThisLine() => Assert.Equal(
        "estimate,jar=14,place=cellar,site=home acidity_p50=0.75,days_to_target_p50=2.25,ph_p10=3.875,ph_p50=4.0625,ph_p90=4.5,sourness_p50=61.5 "
        + "1791201600000",
        SeriesPoints.Of(Make.Estimate(Make.Jar14.Id, Make.Noon + Day), Make.Names(), "home")!.ToLineProtocol());

    [Fact]
    public void Of_EstimateThatMayNeverGetThere_HasNoDaysToTheTarget() => Assert.Equal(
        @"estimate,jar=14,place=kitchen\ counter,site=home acidity_p50=0.75,ph_p10=3.875,ph_p50=4.0625,ph_p90=4.5,sourness_p50=61.5 1791115200000",
        SeriesPoints.Of(Make.Estimate(Make.Jar14.Id, Make.Noon) with { DaysToTargetP50 = null }, Make.Names(), "home")!.ToLineProtocol());

    public static TheoryData<string, Observation> Observations() => new()
    {
        { "kind=check,place=kitchen\\ counter,site=home value=0",
            new Look { Opened = true, Id = default, JarId = Make.Jar14.Id, At = Make.Noon, EnteredAt = Make.Noon, By = "Ada" } },
        { "kind=check,place=kitchen\\ counter,site=home value=1",
        new Sighting { Kind = SightingKind.Film, Id = default, JarId = Make.Jar14.Id, At = Make.Noon, EnteredAt = Make.Noon, By = "Ada" } },
        { "kind=ph,place=kitchen\\ counter,site=home value=3.9",
        new PhMeasurement { Ph = 3.9, Method = PhMethod.Meter, Id = default, JarId = Make.Jar14.Id, At = Make.Noon, EnteredAt = Make.Noon,
        By = "Ada" } },
        { "kind=acidity,place=kitchen\\ counter,site=home value=1.2",
        new Titration { PercentLactic = 1.2, Id = default, JarId = Make.Jar14.Id, At = Make.Noon, EnteredAt = Make.Noon, By = "Ada" } },
        { "kind=taste,place=kitchen\\ counter,site=home value=1", Taste(TasteVerdict.NotYet) },
        { "kind=taste,place=kitchen\\ counter,site=home value=2", Taste(TasteVerdict.Nearly) },
        { "kind=taste,place=kitchen\\ counter,site=home value=3", Taste(TasteVerdict.Right) },
        { "kind=taste,place=kitchen\\ counter,site=home value=4", Taste(TasteVerdict.PastIt) },
    };

    [Theory]
    [MemberData(nameof(Observations))]
    public void Of_Observation_IsThisLine(string line, Observation observation) =>
        Assert.Equal($"observation,jar=14,{line} 1791115200000", SeriesPoints.Of(Logged(observation), Make.Names(), "home")!.ToLineProtocol());

    [Fact]
    public void Of_ThirdObservationOfOneInstant_IsTwoMillisecondsLater() => Assert.Equal(
        @"observation,jar=14,kind=taste,place=kitchen\ counter,site=home value=3 1791115200002",
        SeriesPoints.Of(new LoggedObservation(Taste(TasteVerdict.Right), 2), Make.Names(), "home")!.ToLineProtocol());

    private static Taste Taste(TasteVerdict verdict) =>
        new() { Verdict = verdict, Id = default, JarId = Make.Jar14.Id, At = Make.Noon, EnteredAt = Make.Noon, By = "Ada" };

    private static LoggedObservation Logged(Observation observation) => new(observation, 0);

    private static string Line(Reading reading, params Kitchen.Sensors.Sensor[] sensors) =>
        SeriesPoints.Of(reading, Make.Names(sensors), "home")!.ToLineProtocol();
}
