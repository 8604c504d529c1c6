using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>What is said of one jar as long as it is so: what went in, and what is ahead of it.</summary>
public static class JarWarnings
{
    private const string ChilliMash =
        "Chilli mash without a starter may stay above 4.6: a published one stood at 4.83 after 15 days (abstract, authors not shown). Measure it before you trust any day told here.";

    private const string LowSalt =
        "Salted below 1.5 %: the wrong germs may keep up with those that sour, and it goes soft (at 1.7 % or less: Univ. of Minnesota Extension; Oregon State SP 50-745). "
        + "Measure the pH early and often: only a reading says anything of this jar.";

    /// <summary>Every warning that holds, the most pressing first.</summary>
    /// <param name="jar">The jar, whole.</param>
    /// <param name="forecast">What is expected of it; null where nothing is.</param>
    /// <param name="calendar">Turns days into dates.</param>
    public static IEnumerable<string> Of(Jar jar, Forecast? forecast, ForecastCalendar calendar)
    {
        if (forecast is not null && HeatAhead.Of(forecast.Course, calendar) is { } heat)
            yield return heat;
        if (jar.Salting.Percent < SaltDose.LowestPercent)
            yield return LowSalt;
        if (TestedRecipe.MainVegetable(jar) is { MashMayStayAboveTheLine: true } && jar.Starter is null)
            yield return ChilliMash;
    }
}
