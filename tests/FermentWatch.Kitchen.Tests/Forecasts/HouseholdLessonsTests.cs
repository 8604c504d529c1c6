using FermentWatch.Kinetics.Household;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Tests.Doubles;

namespace FermentWatch.Kitchen.Tests.Forecasts;

public class HouseholdLessonsTests
{
    private static readonly Dictionary<Guid, Place> Places = new() { [Make.Counter.Id] = Make.Counter, [Make.Cellar.Id] = Make.Cellar };

    [Fact]
    public async Task ReadAsync_NothingFinished_HasNothingToTeach() =>
        Assert.Null(await LessonsOf(Make.Jar(1), Make.Jar(2, seen: [Make.Ph(4.0, PhMethod.Meter, 6), Make.Taste(TasteVerdict.Right, 7)])));

    [Fact]
    public async Task ReadAsync_JarsLikedEarly_TeachThatLessSourIsLiked()
    {
        HouseholdPrior? taught = await LessonsOf(LikedOnDay(1, 4), LikedOnDay(2, 4), LikedOnDay(3, 4));
        Assert.True(taught!.LnTasteMean < -0.15, $"{taught}");
        Assert.True(taught.LnTasteDeviation < HouseholdPrior.Unknown.LnTasteDeviation, $"{taught}");
    }

    [Fact]
    public async Task ReadAsync_JarsThatSpoiledOrWereThrownOut_TeachNothing()
    {
        Jar spoiled = LikedOnDay(1, 4), thrown = LikedOnDay(2, 4);
        spoiled.Observations.Add(Make.Sighting(SightingKind.Film, 3));
        thrown.Observations.Add(Make.Stage(JarStage.ThrownOut, 9));
        Assert.Null(await LessonsOf(spoiled, thrown));
    }

    [Fact]
    public async Task ReadAsync_InAnyOrderAndAskedTwice_IsTheSameToTheLastBit()
    {
        Jar[] jars = [LikedOnDay(1, 4), LikedOnDay(2, 6), LikedOnDay(3, 9)];
        var lessons = new HouseholdLessons(new LogInMemory());
        HouseholdPrior? first = await lessons.ReadAsync(jars, Places, [], Make.SetAside().Begin("forecast"), default);
        Assert.Equal(first, await lessons.ReadAsync([.. jars.Reverse()], Places, [], Make.SetAside().Begin("forecast"), default));
        Assert.Equal(first, await LessonsOf([.. jars.Reverse()]));
    }

    [Fact]
    public void Forecast_Taught_MovesTheTastingDayAndNoLine()
    {
        Jar jar = Make.Jar(9);
        JarForecast plain = ForecastOf(jar, null), taught = ForecastOf(jar, new HouseholdPrior(0, 0.15, -0.4, 0.15));
        Assert.True(taught.Forecast.Target!.Value.P50 < plain.Forecast.Target!.Value.P50);
        Assert.Equal(plain.Forecast.AcidLine, taught.Forecast.AcidLine);
        Assert.Equal(plain.Forecast.CentreAcidLine, taught.Forecast.CentreAcidLine);
    }

    [Fact]
    public void Forecast_NotYetOnTheExpectedDay_IsExpectedLater()
    {
        double expected = ForecastOf(Make.Jar(9), null).Forecast.Target!.Value.P50!.Value;
        Jar tasted = Make.Jar(9, seen: Make.Taste(TasteVerdict.NotYet, expected));
        Assert.True(ForecastOf(tasted, null).Forecast.Target!.Value.P50 > expected);
    }

    private static JarForecast ForecastOf(Jar jar, HouseholdPrior? taught) =>
        JarForecaster.Forecast(jar, Places, TemperatureHistory.Empty, QuarterHour.Floor(Make.Day(14)), taught, "");

    private static Jar LikedOnDay(int number, double day) =>
        Make.Jar(number, seen: [Make.Taste(TasteVerdict.Right, day), Make.Taste(TasteVerdict.PastIt, day + 3), Make.Stage(JarStage.Cold, day + 3.1)]);

    private static Task<HouseholdPrior?> LessonsOf(params Jar[] jars) =>
        new HouseholdLessons(new LogInMemory()).ReadAsync(jars, Places, [], Make.SetAside().Begin("forecast"), default);
}
