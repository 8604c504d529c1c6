using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.PuttingUp;

/// <summary>Which jar's brine may start another, and how the jar it starts is read.</summary>
public class StarterSourceTests
{
    private static readonly PutUpForm Good =
        new() { What = "carrot", HowMuch = "700 g", Salt = "2.5 %", Vessel = "1 l", Place = "counter", StarterFrom = "3", StarterBrine = "60 g" };
    private static readonly StarterSource Three = new(3, "cabbage", 3.6, 1.25);

    [Theory]
    [InlineData("meter 3.6", true)]
    [InlineData("", false)]
    [InlineData("strip 4.3", false)]
    [InlineData("meter 5.1", false)]
    [InlineData("meter 3.6|meter 3.9|meter 4.0", false)]
    [InlineData("meter 3.6|seen Film", false)]
    [InlineData("seen Film|meter 3.6|look|look|look", true)]
    [InlineData("seen Slime|meter 3.6|look|look|look", false)]
    [InlineData("seen FuzzOrUnsure|meter 3.6|look|look|look", false)]
    [InlineData("meter 3.6|cold", true)]
    [InlineData("meter 3.6|finished", false)]
    public void Of_Jar_IsASourceOnlyWhenMeasuredBelowAndWithoutTrouble(string happened, bool isOne)
    {
        Jar jar = Make.Jar(3,
            seen: [.. happened.Split('|', StringSplitOptions.RemoveEmptyEntries).Select((words, day) => Happened(words.Split(' '), day + 10))]);
        JarForecast forecast =
            JarForecaster.Forecast(jar, new Dictionary<Guid, Place> { [Make.Counter.Id] = Make.Counter }, TemperatureHistory.Empty, Make.Day(17),
            null, "x");
        StarterSource? source = StarterSource.Of(jar, forecast, DateTimeZone.Utc, Make.Day(17));
        Assert.Equal(isOne, source is not null);
        Assert.Null(StarterSource.Of(jar, null, DateTimeZone.Utc, Make.Day(17)));
        if (source is not null)
            Assert.Equal((3, 3.6, Math.Round(forecast.PointAt(Make.Day(17)).AcidityPercentLactic.P50, 2)),
                (source.Number, source.Ph, source.AcidityPercentLactic));
    }

    [Fact]
    public void Read_WithBrineOfAnotherJar_KeepsJarMassAndAcidityAndTheModelIsToldOfThem()
    {
        Jar jar = Assert.Single(Read(Good).Jars);
        Assert.Equal(new Starter(3, 0.06, 1.25), jar.Starter);
        Assert.Equal((0.06, 1.25), (jar.Recipe().StarterBrine!.MassKilograms, jar.Recipe().StarterBrine!.AcidityPercentLactic));
        Assert.Null(Assert.Single(Read(Good with { StarterFrom = "", StarterBrine = " " }).Jars).Starter);
    }

    [Theory]
    [InlineData("3", "", "starter brine: Enter starter brine, such as 800 g, 2.3 kg, 5 lb or 1 lb 12 oz.")]
    [InlineData("3", "lots", "starter brine: lots cannot be used. Enter 5 g to 25 kg, such as 800 g, 2.3 kg, 5 lb or 1 lb 12 oz.")]
    [InlineData("4", "60 g", "brine of jar: 4 cannot be used. Choose one of 3: a jar that is measured below the acid line and without trouble.")]
    [InlineData("", "60 g", "brine of jar: Choose one of 3: a jar that is measured below the acid line and without trouble.")]
    public void Read_BrineThatCannotBe_SaysWhatToEnter(string from, string much, string said) =>
        Assert.Equal(said, Assert.Single(Read(Good with { StarterFrom = from, StarterBrine = much }).Refusals).ToString());

    [Fact]
    public void Correct_BrineThatWentIn_KeepsItsAcidityWhateverBecameOfItsJar()
    {
        Jar jar = Make.Jar(5);
        jar.Starter = new Starter(3, 0.06, 1.25);
        CorrectionOrder order = new JarCorrecting(Make.Household(), [Make.Counter], Make.Day(8), "Mira")
            .Read(jar, new CorrectionForm { StarterBrine = "90 g" });
        Assert.Equal(new Starter(3, 0.09, 1.25), order.Corrected!.Starter);
        Assert.Equal("starter brine: 60 g from jar 3 -> 90 g from jar 3",
            order.Corrections.Select(each => $"{each.Field}: {each.Before} -> {each.After}").Single());
        order = new JarCorrecting(Make.Household(), [Make.Counter], Make.Day(8), "Mira")
            .Read(jar, new CorrectionForm { StarterFrom = "", StarterBrine = "" });
        Assert.Null(order.Corrected!.Starter);
    }

    [Fact]
    public void Forecast_WithStarterBrine_IsSourEarlier()
    {
        var places = new Dictionary<Guid, Place> { [Make.Counter.Id] = Make.Counter };
        Jar plain = Make.Jar(5), started = Make.Jar(5);
        started.Starter = new Starter(3, 0.06, 1.25);
        double PhOnDay2(Jar jar) => JarForecaster.Forecast(jar, places, TemperatureHistory.Empty, Make.Day(0), null, "x").PointAt(Make.Day(2)).Ph.P50;
        Assert.True(PhOnDay2(started) < PhOnDay2(plain) - 0.1, $"{PhOnDay2(started)} with brine, {PhOnDay2(plain)} without");
    }

    private static PutUpOrder Read(PutUpForm form) => PutUp.Read(form, Make.Household(), [Make.Counter], Make.Day(8), [Three]);

    private static Observation Happened(string[] words, double day) => words[0] switch
    {
        "meter" => Make.Ph(double.Parse(words[1], System.Globalization.CultureInfo.InvariantCulture), PhMethod.Meter, day),
        "strip" => Make.Ph(double.Parse(words[1], System.Globalization.CultureInfo.InvariantCulture), PhMethod.Strip, day),
        "seen" => Make.Sighting(Enum.Parse<SightingKind>(words[1]), day),
        "look" => Make.Look(day),
        "cold" => Make.Stage(JarStage.Cold, day),
        _ => Make.Stage(JarStage.Finished, day),
    };
}
