using CsCheck;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Tests.Forecasting;

/// <summary>What must hold over the whole input space.</summary>
public class ForecastPropertyTests
{
    private static readonly int Draws = Environment.GetEnvironmentVariable("FERMENTWATCH_TESTS_LONG") == "1" ? 1000 : 60;

    private static readonly Gen<PhReading> AnyReading = Gen.Select(Gen.Double[0, 40], Gen.Double[2, 8], Gen.Enum<PhMethod>(), (day, ph, method) =>
        new PhReading(day, ph, method));

    private static readonly Gen<TemperatureCourse> AnyCourse = Gen.OneOf(
        Gen.Select(Gen.Double[-5, 45], Gen.Double[0, 5], (celsius, spread) => TemperatureCourse.Constant(celsius, spread)),
        Gen.Select(Gen.Double[-20, 60], Gen.Bool, (celsius, missing) => TemperatureStep.Room(missing ? null : celsius)).Array[1, 600]
            .Select(steps => TemperatureCourse.FromSteps(steps, TypicalRoom.Usual)));

    private static readonly Gen<JarRecipe> AnyRecipe = Gen.Select(
        Gen.Select(Gen.Int[0, Vegetable.All.Count - 1].Select(index => Vegetable.All[index]), Gen.Double[0.001, 20], (vegetable, mass) =>
            new ProduceShare(vegetable, mass)).Array[1, 4],
        Gen.Enum<Cut>(), Gen.Double[1.5, 8], Gen.Double[0, 1], Gen.Double[0, 10], Gen.Double[0.1, 250], Gen.Double[0, 1],
        (shares, cut, salt, spread, water, litres, starter) => new JarRecipe
        {
            Shares = shares,
            Cut = cut,
            Salt = new SaltDose(salt, spread),
            AddedWaterKilograms = water,
            VesselLitres = litres,
            StarterBrine = starter > 0.7 ? new StarterBrine(starter, 1.5) : null,
            Vinegar = starter < 0.2 ? new Vinegar(starter, 5) : null,
        });

    private static readonly Gen<ForecastRequest> AnyRequest = Gen.Select(
        AnyRecipe, AnyCourse, AnyReading.Array[0, 3], Gen.Double[0.02, 60], Gen.Double[0.02, 20], Gen.ULong,
        (recipe, course, readings, days, every, seed) => new ForecastRequest
        {
            Recipe = recipe,
            Temperatures = course,
            Readings = readings,
            Days = days,
            EveryDays = every,
            Seed = seed,
            Members = 24,
            Target = new ForecastTarget(TargetKind.Sourness, 60),
        });

    [Fact]
    public void Run_AnyInput_IsFiniteOrderedAndNeverNegative() => AnyRequest.Sample(
        request =>
        {
            Assert.Empty(request.Check());
            Forecast forecast = Forecaster.Run(request);
            Assert.Equal(0, forecast.Course[0].Day);
            Assert.Equal(request.Days, forecast.Course[^1].Day);
            foreach (CoursePoint point in forecast.Course)
            {
                Ordered(point.Ph, 1.5, 8);
                Ordered(point.CentrePh, 1.5, 8);
                Ordered(point.AcidityPercentLactic, 0, 12);
                Assert.InRange(point.SournessP50, 0, 2000);
                Assert.InRange(point.JarCelsius, -5, 45);
            }
            Ordered(forecast.AcidLine, request.Days);
            Ordered(forecast.Ph4, request.Days);
            Ordered(forecast.Target!.Value, request.Days);
        }, iter: Draws);

    [Fact]
    public void Run_SameFactsInAnyOrder_GivesTheSameBits() => AnyRequest.Sample(
        request =>
        {
            Forecast forwards = Forecaster.Run(request);
            Forecast backwards = Forecaster.Run(request with { Readings = [.. request.Readings.Reverse()] });
            Assert.Equal(forwards.Course, backwards.Course);
            Assert.Equal(forwards.AcidLine, backwards.AcidLine);
            Assert.Equal(forwards.Target, backwards.Target);
        }, iter: Draws / 3);

    private static void Ordered(Quantiles quantiles, double low, double high)
    {
        Assert.InRange(quantiles.P10, low, quantiles.P50);
        Assert.InRange(quantiles.P90, quantiles.P50, high);
    }

    private static void Ordered(PassageDays days, double span)
    {
        Assert.True(days.P90 is null || days.P50 <= days.P90);
        Assert.True(days.P50 is null || days.P10 <= days.P50);
        Assert.InRange(days.P10 ?? 0, 0, span);
        Assert.InRange(days.P90 ?? 0, 0, span + 1e-9);
    }
}
