using System.Globalization;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Occasions;

/// <summary>
/// Too warm and too cold where jars ferment, as measured. Above 75 F kraut may go soft, below 60 F it may not ferment: USDA
/// Complete Guide to Home Canning, Guide 6, AIB 539, 2015. Above 80 F soft and spoiled: Univ. of New Hampshire; Penn State.
/// For how long it must last before it is told is this project's own rule: a warm afternoon is none.
/// </summary>
public static class WarmthOccasions
{
    private static readonly Duration LongestSpell = Duration.FromDays(3);

    private static readonly Limit Warm = new(OccasionKind.TooWarm, 23.9, Duration.FromHours(12));
    private static readonly Limit FarTooWarm = new(OccasionKind.FarTooWarm, 26.7, Duration.FromHours(6));
    private static readonly Limit Hot = new(OccasionKind.FarTooWarm, HeatAhead.Celsius, Duration.FromHours(1));
    private static readonly Limit Cold = new(OccasionKind.TooCold, 15.6, Duration.FromHours(24));

    /// <summary>What is to be read for it before the present.</summary>
    public static Duration LooksBack => LongestSpell;

    /// <summary>What holds in a facts.</summary>
    public static IEnumerable<Occasion> Of(OccasionFacts facts)
    {
        Instant asOf = QuarterHour.Floor(facts.Now);
        foreach (var stood in facts.Fermenting.GroupBy(jar => jar.PlacementAt(facts.Now).PlaceId))
        {
            (Guid Key, List<Jar> Jars) shelf = (stood.Key, [.. stood]);
            double?[] quarters = facts.Temperatures.Over(shelf.Key, asOf - LongestSpell, asOf);
            Duration far = WarmSpell.Length(quarters, celsius => celsius > FarTooWarm.Celsius);
            Duration warm = WarmSpell.Length(quarters, celsius => celsius > Warm.Celsius);
            Duration cold = WarmSpell.Length(quarters, celsius => celsius < Cold.Celsius);
            string place = facts.Places[shelf.Key].Name;
            Duration hot = WarmSpell.Length(quarters, celsius => celsius >= Hot.Celsius);
            if (hot >= Hot.ToldAfter)
                yield return On(facts, Hot, shelf.Key, place, shelf.Jars, hot, quarters);
            else if (far >= FarTooWarm.ToldAfter)
                yield return On(facts, FarTooWarm, shelf.Key, place, shelf.Jars, far, quarters);
            else if (warm >= Warm.ToldAfter)
                yield return On(facts, Warm, shelf.Key, place, shelf.Jars, warm, quarters);
            var young = shelf.Jars.Where(jar => AcidLine.Report(jar, facts.Zone).State != AcidLineState.MeasuredBelow).ToList();
            if (cold >= Cold.ToldAfter && young.Count > 0)
                yield return On(facts, Cold, shelf.Key, place, young, cold, quarters);
        }
    }

    private static Occasion On(
        OccasionFacts facts, Limit limit, Guid placeId, string place,
            IReadOnlyCollection<Jar> jars, Duration length, IReadOnlyList<double?> quarters)
    {
        TemperatureUnit unit = facts.Household.TemperatureUnit;
        string now = MeasureWords.Temperature(quarters.OfType<double>().Last(), unit);
        string lasted = length >= LongestSpell ? "for 3 days or more"
            : string.Create(CultureInfo.InvariantCulture, $"for {length.TotalHours:0} hours");
        string body = limit.Kind switch
        {
            _ when limit == Hot => $"{Line(limit, unit)} or more {lasted}, now {now}. {HeatAhead.Advice}",
            OccasionKind.TooWarm => $"Above {Line(limit, unit)} {lasted}, now {now}. They may go soft. Move them to {Usual(unit)}, or taste sooner.",
            OccasionKind.FarTooWarm =>
                $"Above {Line(limit, unit)} {lasted}, now {now}. Public advice: soft and spoiled above that. Move them somewhere cooler today.",
            _ => $"Below {Line(limit, unit)} {lasted}, now {now}. {Slowly(jars)} Move them to {Usual(unit)}, or expect everything later.",
        };
        string headline = limit == Hot ? "Hot"
            : limit.Kind switch { OccasionKind.TooWarm => "Too warm", OccasionKind.FarTooWarm => "Far too warm", _ => "Too cold" };
        return new Occasion(limit.Kind, placeId, limit == Hot ? "heat" : "spell", $"{headline}, {place}", [.. jars.Select(jar => jar.Number)],
            body) { Lasting = true };
    }

    /// <summary>What cold means for those that are not below the line yet: some are published to ferment at 10 C.</summary>
    private static string Slowly(IReadOnlyCollection<Jar> jars)
    {
        List<int> others = [.. jars.Where(jar => !TestedRecipe.FermentsInTheCold(jar)).Select(jar => jar.Number)];
        return others.Count == jars.Count ? "They may hardly ferment."
            : others.Count == 0 ? $"{TestedRecipe.WhoGoesOnInTheCold} go on there, slowly."
            : $"{TestedRecipe.WhoGoesOnInTheCold} go on there, slowly; {NumberList.Say(others)} may hardly ferment.";
    }

    private static string Line(Limit limit, TemperatureUnit unit) =>
        MeasureWords.Temperature(unit == TemperatureUnit.Celsius ? Math.Round(limit.Celsius) : limit.Celsius, unit);

    private static string Usual(TemperatureUnit unit) => unit == TemperatureUnit.Fahrenheit ? "70 to 75 °F" : "21 to 24 °C";

    private sealed record Limit(OccasionKind Kind, double Celsius, Duration ToldAfter);
}
