using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Tests.Doubles;

namespace FermentWatch.Kitchen.Tests.Forecasts;

public class SharpeningTests
{
    [Fact]
    public void Of_JarThreeDaysOldWithNothingMeasured_NarrowsWithSensorAndStripAndMostWithAMeter()
    {
        Jar jar = Make.Jar(7);
        var places = new Dictionary<Guid, Place> { [Make.Counter.Id] = Make.Counter };
        JarForecast saved = JarForecaster.Forecast(jar, places, TemperatureHistory.Empty, QuarterHour.Floor(Make.Day(3)), null, "");
        Sharpening told = Sharpening.Of(jar, places, TemperatureHistory.Empty, saved);
        Assert.Equal(saved.Forecast.Target, told.Now);
        Assert.True(Width(told.WithSensor!.Value) < Width(told.Now), $"{told}");
        Assert.True(Width(told.WithMeter) < Width(told.WithStrip), $"{told}");
        Assert.True(Width(told.WithStrip) < Width(told.Now), $"{told}");
    }

    /// <summary>As a factor: what slows a jar stretches all of its days, so that a later day is uncertain by more days.</summary>
    private static double Width(PassageDays days) => days.P90!.Value / days.P10!.Value;
}
