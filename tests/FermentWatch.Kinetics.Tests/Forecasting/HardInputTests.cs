using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Tests.Forecasting;

/// <summary>Inputs that are hard, not wrong: an answer with a wider spread and a reason; those that are wrong: one line.</summary>
public class HardInputTests
{
    /// <summary>Many members: what a temperature adds is small beside the pace of the jar itself.</summary>
    private static readonly ForecastRequest Plain = new()
    {
        Members = 4096,
        Recipe = JarRecipe.Of(Vegetable.Of("cabbage"), Cut.Shredded, 2.25),
        Temperatures = TemperatureCourse.Constant(19),
        Days = 14,
    };

    [Fact]
    public void Run_SaltByTaste_IsWiderThanWeighed()
    {
        Forecast weighed = Forecaster.Run(Plain with { Recipe = Plain.Recipe with { Salt = SaltDose.Weighed(2.5) } });
        Forecast byTaste = Forecaster.Run(Plain with { Recipe = Plain.Recipe with { Salt = SaltDose.ByTaste } });
        Assert.True(Width(byTaste) > Width(weighed));
    }

    [Fact]
    public void Run_PlaceWithoutSensor_IsWider() =>
        Assert.True(Width(Forecaster.Run(Plain with { Temperatures = TemperatureCourse.Typical(TypicalRoom.Usual) })) > 1.02 * Width(
            Forecaster.Run(Plain with { Temperatures = TemperatureCourse.Constant(20) })));

    [Fact]
    public void Run_TemperatureWithAGap_IsWiderAndSaysWhy()
    {
        static TemperatureCourse Course(bool gap) => TemperatureCourse.FromSteps(
            [.. Enumerable.Range(0, 14 * 96).Select(i => TemperatureStep.Room(gap && i is > 60 and < 400 ? null : 19 + (2 * Math.Sin(i / 300.0))))],
            TypicalRoom.Usual);
        Forecast whole = Forecaster.Run(Plain with { Temperatures = Course(false) });
        Forecast gappy = Forecaster.Run(Plain with { Temperatures = Course(true) });
        Assert.True(Width(gappy) > Width(whole));
        Assert.Contains(gappy.Remarks, remark => remark.Contains("not measured", StringComparison.Ordinal));
    }

    [Fact]
    public void Run_ReadingsThatContradictEachOther_AreFlagged()
    {
        Forecast forecast = Forecaster.Run(
            Plain with { Readings = [new PhReading(5, 5.4, PhMethod.Meter), new PhReading(5.1, 3.8, PhMethod.Meter)] });
        Assert.NotEmpty(forecast.Flagged);
        Assert.Contains(forecast.Flagged, flagged => flagged.Reading.Ph == 3.8);
    }

    [Theory]
    [InlineData(400, "days")]
    [InlineData(double.NaN, "days")]
    [InlineData(0, "days")]
    public void Check_ImpossibleSpan_IsOneRefusal(double days, string field) =>
        Assert.Equal(field, Assert.Single((Plain with { Days = days }).Check()).Field);

    [Theory]
    [InlineData(0.0)]
    [InlineData(300)]
    public void Check_ImpossibleVessel_IsOneRefusal(double litres) =>
        Assert.Equal("vessel", Assert.Single((Plain with { Recipe = Plain.Recipe with { VesselLitres = litres } }).Check()).Field);

    [Fact]
    public void Run_VesselOfTwoHundredLitres_FollowsItsRoomSlowly()
    {
        ForecastRequest warmed =
            Plain with { Temperatures = TemperatureCourse.Constant(8).Then(1, TemperatureCourse.Constant(25)), Days = 1.5, EveryDays = 0.5 };
        Forecast barrel = Forecaster.Run(warmed with { Recipe = Plain.Recipe with { VesselLitres = 200 } });
        Forecast jar = Forecaster.Run(warmed with { Recipe = Plain.Recipe with { VesselLitres = 1 } });
        Assert.InRange(barrel.Course[^1].JarCelsius, 14, 20);
        Assert.InRange(jar.Course[^1].JarCelsius, 24, 25);
    }

    [Fact]
    public void Run_RefusedRequest_ThrowsWithEveryReason()
    {
        ForecastRequest wrong = Plain with { Days = -1, Recipe = Plain.Recipe with { Salt = SaltDose.Weighed(0.5) } };
        ArgumentException thrown = Assert.Throws<ArgumentException>(() => Forecaster.Run(wrong));
        Assert.Contains("salt", thrown.Message, StringComparison.Ordinal);
        Assert.Contains("days", thrown.Message, StringComparison.Ordinal);
    }

    private static double Width(Forecast forecast) => forecast.AcidLine.P90!.Value - forecast.AcidLine.P10!.Value;
}
