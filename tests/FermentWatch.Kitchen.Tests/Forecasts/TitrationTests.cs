using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Tests.Doubles;
using FermentWatch.Kitchen.Words;
using NSubstitute;

namespace FermentWatch.Kitchen.Tests.Forecasts;

public class TitrationTests
{
    private static readonly Dictionary<Guid, Place> Places = new() { [Make.Counter.Id] = Make.Counter };

    [Fact]
    public void Forecast_WithATitration_IsDrawnTowardsItAndNarrower()
    {
        Jar jar = Make.Jar(7);
        JarForecast before = Forecast(jar);
        double expected = before.PointAt(Make.Day(8)).AcidityPercentLactic.P50;
        jar.Observations.Add(Titrated(expected + 0.2, 8));
        JarForecast after = Forecast(jar);
        var (was, now) = (before.PointAt(Make.Day(8)).AcidityPercentLactic, after.PointAt(Make.Day(8)).AcidityPercentLactic);
        Assert.InRange(now.P50, expected + 0.05, expected + 0.3);
        Assert.True(now.P90 - now.P10 < was.P90 - was.P10, $"{now} after {was}");
    }

    [Fact]
    public async Task Inputs_WithATitrationOrVinegar_HaveAnotherNameSoThatTheForecastIsRenewed()
    {
        Jar jar = Make.Jar(7);
        string before = await NameAsync(jar);
        jar.Observations.Add(Titrated(0.9, 8));
        string titrated = await NameAsync(jar);
        jar.Vinegar = new Vinegar(0.06, 5);
        Assert.Equal(3, new[] { before, titrated, await NameAsync(jar) }.Distinct().Count());
    }

    [Fact]
    public void Of_ATitration_ShowsTheArithmetic()
    {
        // acidity_method: 10 g and 0.1 N, 16.65 mL is 1.5 %.
        var titration = new Titration
        {
            Id = Guid.NewGuid(), JarId = Guid.Empty, At = Make.Day(8), EnteredAt = Make.Day(8), By = "Mira", PercentLactic = 1.5002,
                BaseMillilitres = 16.65, BaseNormality = 0.1, SampleMillilitres = 10,
        };
        Assert.Equal("titrated: 1.50 % acid (16.65 mL x 0.1 N x 0.0901 x 100 / 10 mL)", ObservationWords.Of(titration));
        Assert.Equal("titrated: 0.90 % acid", ObservationWords.Of(Titrated(0.9, 8)));
    }

    private static Titration Titrated(double percent, double day) =>
        new() { Id = Guid.NewGuid(), JarId = Guid.Empty, At = Make.Day(day), EnteredAt = Make.Day(day), By = "Mira", PercentLactic = percent };

    private static JarForecast Forecast(Jar jar) =>
        JarForecaster.Forecast(jar, Places, TemperatureHistory.Empty, QuarterHour.Floor(Make.Day(9)), null, "");

    private static async Task<string> NameAsync(Jar jar) =>
        (await new ForecastInputs(new MeansOfJars(Substitute.For<IReadingLog>(), []), Places, null)
            .OfAsync(jar, QuarterHour.Floor(Make.Day(9)), default)).Name;
}
