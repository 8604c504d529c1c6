using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Occasions;

/// <summary>Tasting day tomorrow, sour enough, and past it.</summary>
public static class TastingOccasions
{
    /// <summary>One step of sourness beyond the wanted one, in per cent lactic acid; the smallest step of the household's scale.</summary>
    private const double PastByPercent = 0.25;

    private const string Lid = "Solid lid, and into the cold";

    /// <summary>What holds in a scene.</summary>
    public static IEnumerable<Occasion> Of(Scene scene) => scene.Fermenting.Select(jar => Of(scene, jar)).OfType<Occasion>();

    private static Occasion? Of(Scene scene, Jar jar)
    {
        if (jar.Standing.OfType<Taste>().LastOrDefault() is { } taste && taste.Verdict is TasteVerdict.Right or TasteVerdict.PastIt)
            return scene.AfterMorning && scene.DateOf(taste.At) < scene.Today ? Tasted(scene, jar, taste) : null;
        JarForecast? forecast = scene.Forecasts.GetValueOrDefault(jar.Id);
        if (forecast is null || TastingDue.From(jar, forecast, scene.Zone) is not { } from)
            return null;
        if (scene.AfterEvening && from == scene.Today.PlusDays(1))
            return On(OccasionKind.TastingTomorrow, jar, "first", "Taste tomorrow",
                "About sour enough then: expected, not tasted. A clean fork, and daily from then on until it is right.");
        bool tastedLately = jar.Standing.OfType<Taste>().Any(each => Period.DaysBetween(scene.DateOf(each.At), scene.Today) < 2);
        return scene.AfterMorning && from < scene.Today && !tastedLately ? Expected(scene, jar, forecast) : null;
    }

    private static Occasion Tasted(Scene scene, Jar jar, Taste taste)
    {
        string day = DateWords.When(scene.DateOf(taste.At), scene.Today);
        string cold = MeasureWords.Temperature(ColdCelsius, scene.Household.TemperatureUnit);
        if (taste.Verdict == TasteVerdict.PastIt)
            return On(OccasionKind.PastTarget, jar, $"taste {taste.Id:N}", "Past it, still in the warm",
                $"{taste.By} tasted it {day}; it goes on souring. {Lid} at {cold} or below today.");
        string early = scene.DayOf(jar) < StoreOccasions.EarlyBeforeDay ? " Public advice lets kraut work 3 to 6 weeks first." : "";
        return On(OccasionKind.TargetReached, jar, $"taste {taste.Id:N}", "Right, still in the warm",
            $"{taste.By} tasted it {day}; it goes on souring. {Lid} at {cold} or below.{early}");
    }

    private static Occasion? Expected(Scene scene, Jar jar, JarForecast forecast)
    {
        CoursePoint now = forecast.PointAt(scene.Now);
        if (now.AcidityPercentLactic.P50 >= SournessLevel.Of(jar.Target).AcidityPercentLactic + PastByPercent)
            return On(OccasionKind.PastTarget, jar, "expected", "Probably sourer than you like",
                "Expected, not tasted. Taste it today; if it is right or past it, into the cold.");
        return forecast.Forecast.Target?.P90 is { } late && scene.DateOf(forecast.At(late)) <= scene.Today
            ? On(OccasionKind.TargetReached, jar, "expected", "Very probably sour enough", "Expected, and no taste says so yet. Taste it today; if it is right, into the cold.")
            : null;
    }

    private const double ColdCelsius = 4;

    private static Occasion On(OccasionKind kind, Jar jar, string cause, string headline, string body) =>
        new(kind, jar.Id, cause, headline, [jar.Number], body) { JarName = jar.Name };
}
