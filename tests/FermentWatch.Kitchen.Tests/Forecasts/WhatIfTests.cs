using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Tests.Doubles;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Forecasts;

public class WhatIfTests
{
    private static readonly Dictionary<Guid, Place> Places = new() { [Make.Counter.Id] = Make.Counter, [Make.Cellar.Id] = Make.Cellar };

    [Fact]
    public void Moved_ToACellarOnDayThree_IsLaterAndToWhereItStandsAlmostTheSame()
    {
        (Jar jar, JarForecast saved) = OnDayThree();
        WhatIf cellar = Moved(jar, saved, Make.Cellar, 3), here = Moved(jar, saved, Make.Counter, 3);
        Assert.True(cellar.Forecast.Target!.Value.P50 > saved.Forecast.Target!.Value.P50 + 3,
            $"{cellar.Forecast.Target} after {saved.Forecast.Target}");
        Assert.Equal(saved.Forecast.Target.Value.P50!.Value, here.Forecast.Target!.Value.P50!.Value, 0.5);
    }

    [Fact]
    public void Moved_LaterThanToday_LeavesTheDaysBefore()
    {
        (Jar jar, JarForecast saved) = OnDayThree();
        WhatIf later = Moved(jar, saved, Make.Cellar, 10);
        Assert.Equal(saved.PointAt(saved.At(9)).Ph, later.At(9).Ph);
        Assert.True(later.At(20).Ph.P50 > saved.PointAt(saved.At(20)).Ph.P50);
    }

    [Fact]
    public void Moved_AsOutlookMoves_IsTheSameToTheLastBit()
    {
        (Jar jar, JarForecast saved) = OnDayThree();
        ForecastRequest request = JarForecaster.Request(jar, TemperatureCourse.Constant(20), 30);
        var room = new TypicalRoom(4, TemperatureStep.RoomSensorSpreadCelsius);
        Assert.Equal(Forecaster.Run(request with { Temperatures = request.Temperatures.ThenIn(7, room, 30) }).AcidLine,
            Forecaster.Run(request with { Temperatures = TemperatureCourse.Constant(20)
                .Then(7, TemperatureCourse.FromSteps([.. Enumerable.Repeat(TemperatureStep.Room(4), 31 * 96)], TypicalRoom.Usual)) }).AcidLine);
        Assert.Equal(3, saved.Forecast.Course.First(point => point.Day >= 3).Day);
    }

    [Theory]
    [InlineData(24, "ready by then nine times in ten")]
    [InlineData(18, "more likely ready by then than not")]
    [InlineData(12, "perhaps ready by then, rather not")]
    [InlineData(9, "not ready by then, as expected")]
    public void ReadyBy_ADate_SaysHowSure(int daysAfterPacking, string expected)
    {
        var packed = new LocalDate(2026, 12, 1);
        Assert.Equal(expected, WhatIfWords.ReadyBy(packed.PlusDays(daysAfterPacking), new PassageDays(9.5, 14.5, 23.2), packed));
    }

    [Fact]
    public void ReadyBy_NeverWithinTheForecast_IsNotExpected() =>
        Assert.Equal("not ready by then, as expected", WhatIfWords.ReadyBy(new LocalDate(2027, 1, 1), default, new LocalDate(2026, 12, 1)));

    [Fact]
    public void StillToCome_InTheCold_IsLessADayThanOnTheCounterAndNeverMoreSugarThanWentIn()
    {
        (Jar jar, JarForecast saved) = OnDayThree();
        StillToCome counter = StillToCome.Of(jar, Places, TemperatureHistory.Empty, saved),
            cold = StillToCome.Of(jar, Places, TemperatureHistory.Empty, saved, TypicalRoom.Refrigerator);
        Assert.InRange(counter.GasLitres.Middle, 0.01, counter.GasLitres.Most);
        Assert.True(cold.MostLitresADay <= counter.MostLitresADay, $"{cold} against {counter}");
        Assert.True(cold.GasLitres.Middle < counter.GasLitres.Middle, $"{cold} against {counter}");
        // USDA SR 11109: 3.20 g of sugar and 92.18 g of water in 100 g of cabbage.
        Assert.Equal(100 * 3.20 / 92.18, counter.SugarAtFirst, 9);
        Assert.True(counter.SugarLeft.Least <= counter.SugarLeft.Most && counter.SugarLeft.Most <= counter.SugarAtFirst, $"{counter}");
        // A jar of 1 l with 0.8 kg in it.
        Assert.Equal(1 - (0.8 / 1.02), counter.HeadspaceLitres, 9);
    }

    [Theory]
    [InlineData(0.5, "twice a day")]
    [InlineData(0.2, "once a day")]
    [InlineData(0.1, "every other day")]
    [InlineData(0.02, "once a week")]
    [InlineData(0, "once a week")]
    public void Gas_ByTheBusiestDay_SaysHowOftenToOpen(double litresADay, string expected) =>
        Assert.EndsWith($"let it out {expected}.", WhatIfWords.Gas(new StillToCome((0.5, 1.2), litresADay, 0.2, 3, (1, 2))),
        StringComparison.Ordinal);

    [Fact]
    public void Sodium_OfASaltedJar_IsThatOfItsServing()
    {
        // 30 g of 2.25 % hold 0.675 g of salt, of which 39.34 % is sodium: 265.5 mg.
        Assert.StartsWith("Sodium: about 270 mg in a serving of 30 g", WhatIfWords.Sodium(Make.Jar(1)), StringComparison.Ordinal);
        Jar byTaste = Make.Jar(1);
        byTaste.Salting = new Salting(SaltKnowledge.ByTaste, null);
        Assert.StartsWith("Sodium: 180 to 410 mg", WhatIfWords.Sodium(byTaste), StringComparison.Ordinal);
    }

    [Fact]
    public void BestEaten_Kimchi_IsTheWindowPublishedForItAndNothingElseHasOne()
    {
        Jar napa = Make.Jar(1);
        napa.Portions = [new Portion("napa", 1)];
        var calendar = new ForecastCalendar(Make.Packed, 60, Make.Packed, DateTimeZone.Utc);
        IReadOnlyList<CoursePoint> course = [.. Enumerable.Range(0, 20).Select(day => Point(day, 0.2 + (0.05 * day)))];
        Assert.EndsWith("Chang & Kim 2000): about Monday to 12 October, by its middle course.", WhatIfWords.BestEaten(napa, course, calendar),
            StringComparison.Ordinal);
        Assert.Null(WhatIfWords.BestEaten(Make.Jar(1), course, calendar));
    }

    [Fact]
    public void Sharpening_SaltedByTaste_SaysWhatWeighingWouldHaveNarrowed()
    {
        (Jar jar, JarForecast _) = OnDayThree();
        jar.Salting = new Salting(SaltKnowledge.ByTaste, null);
        JarForecast saved = JarForecaster.Forecast(jar, Places, TemperatureHistory.Empty, QuarterHour.Floor(Make.Day(3)), null, "");
        Assert.NotEqual(saved.Forecast.Target, Sharpening.Of(jar, Places, TemperatureHistory.Empty, saved).WithWeighedSalt);
    }

    private static CoursePoint Point(double day, double acidity)
    {
        var level = new Quantiles(acidity, acidity, acidity);
        return new CoursePoint(day, 20, level, level, 0, level);
    }

    private static WhatIf Moved(Jar jar, JarForecast saved, Place to, double day) =>
        WhatIf.Moved(jar, Places, TemperatureHistory.Empty, saved, to, day);

    private static (Jar Jar, JarForecast Saved) OnDayThree()
    {
        Jar jar = Make.Jar(7);
        return (jar, JarForecaster.Forecast(jar, Places, TemperatureHistory.Empty, QuarterHour.Floor(Make.Day(3)), null, ""));
    }
}
