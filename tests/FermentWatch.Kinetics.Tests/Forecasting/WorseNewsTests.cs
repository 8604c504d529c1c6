using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Tests.Forecasting;

/// <summary>What a reading may do to an answer, and what it may not.</summary>
public class WorseNewsTests
{
    private static readonly ForecastRequest Plain = new()
    {
        Recipe = JarRecipe.Of(Vegetable.Of("cabbage"), Cut.Shredded, 2.25),
        Temperatures = TemperatureCourse.Constant(19),
        Days = 60,
        EveryDays = 5,
    };

    /// <summary>
    /// Days on which a first reading is worse and worse; a twentieth is what members drawn anew may differ by. A reading too good to be
    /// believed is flagged and leaves the late end where it was without it: later than one that is just believed.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Run_ReadingWorseAndWorse_NeverMovesTheLineEarlier(double day)
    {
        PassageDays last = default;
        for (double ph = 4.2; ph < 5.8; ph += 0.3)
        {
            Forecast forecast = Forecaster.Run(Plain with { Members = 512, Readings = [new PhReading(day, ph, PhMethod.Meter)] });
            PassageDays line = forecast.AcidLine;
            if (forecast.Flagged.Any(flagged => !flagged.WorseThanExpected))
                continue;
            Assert.True((line.P50 ?? 99) >= 0.95 * (last.P50 ?? 0), $"median of {line} after {last} at pH {ph:0.0}");
            Assert.True((line.P90 ?? 99) >= 0.95 * (last.P90 ?? 0), $"late end of {line} after {last} at pH {ph:0.0}");
            last = new(line.P10, line.P50 ?? 99, line.P90 ?? 99);
        }
    }

    [Theory]
    [InlineData(5.4, 3.8)]
    [InlineData(4.9, 4.2)]
    public void Run_TwoReadingsThatContradictEachOther_AreFlaggedAndWidenWhatEitherSaysAlone(double high, double low)
    {
        PhReading worse = new(4, high, PhMethod.Meter);
        PhReading better = new(4.1, low, PhMethod.Meter);
        Forecast both = Forecaster.Run(Plain with { Readings = [worse, better] });
        Assert.Contains(both.Flagged, flagged => flagged.Reading == worse && flagged.WorseThanExpected);
        Assert.Contains(both.Flagged, flagged => flagged.Reading == better && !flagged.WorseThanExpected);
        Assert.All([worse, better], reading =>
            Assert.True(Width(both) >= Width(Forecaster.Run(Plain with { Readings = [reading] })), $"{both.AcidLine}"));
    }

    [Theory]
    [InlineData(3, 3.0)]
    [InlineData(6, 6.0)]
    public void Run_FlaggedReading_NeverNarrows(double day, double ph)
    {
        Forecast without = Forecaster.Run(Plain);
        Forecast with = Forecaster.Run(Plain with { Readings = [new PhReading(day, ph, PhMethod.Meter)] });
        Assert.Single(with.Flagged);
        Assert.True(with.AcidLine.P10 <= without.AcidLine.P10 && (with.AcidLine.P90 ?? 99) >= without.AcidLine.P90,
            $"{with.AcidLine}, without {without.AcidLine}");
        Assert.All(with.Course.Zip(without.Course), pair =>
            Assert.True(pair.First.Ph.P10 <= pair.Second.Ph.P10 && pair.First.Ph.P90 >= pair.Second.Ph.P90));
    }

    [Fact]
    public void Run_StarterBrineThatBeginsBelowTheLine_WaitsForTheLastTimeItComesDown()
    {
        ForecastRequest request = Plain with
        {
            Recipe = JarRecipe.Of(Vegetable.Of("carrot"), Cut.Pieces, 2.5) with { AddedWaterKilograms = 0.5,
                StarterBrine = new StarterBrine(0.08, 1.2) },
            EveryDays = 0.25,
        };
        Forecast forecast = Forecaster.Run(request);
        Assert.True(forecast.Course[0].Ph.P50 < 4.6, $"begins at {forecast.Course[0].Ph}");
        double highestAfter = forecast.Course.Where(point => point.Day < forecast.AcidLine.P50).Max(point => point.Ph.P50);
        Assert.True(highestAfter > 4.6, $"rises to {highestAfter:0.00}");
        Assert.All(forecast.Course.Where(point => point.Day > forecast.AcidLine.P90), point => Assert.True(point.Ph.P50 <= 4.6, $"{point}"));
    }

    private static double Width(Forecast forecast) => (forecast.AcidLine.P90 ?? 99) - forecast.AcidLine.P10!.Value;
}
