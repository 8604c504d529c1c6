using System.Globalization;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Forecasts;

/// <summary>What becomes of a jar elsewhere or later, and what is in a serving, in words.</summary>
public static class WhatIfWords
{
    /// <summary>Mass of sodium in salt: 22.99 of 58.44.</summary>
    private const double SodiumShare = 22.99 / 58.44;

    /// <summary>A serving of pickles, g (21 CFR 101.12, from memory).</summary>
    private const double ServingGrams = 30;

    /// <summary>The acidity at which kimchi is best eaten, per cent lactic (Chang &amp; Kim 2000).</summary>
    private const double KimchiFrom = 0.40, KimchiUpTo = 0.75;

    /// <summary>Whether it is as sour as wanted on a date, by the same days after packing as <c>outlook --ready</c>.</summary>
    public static string ReadyBy(LocalDate date, PassageDays target, LocalDate packed)
    {
        PackBy by = PackBy.For(date, target);
        return packed <= by.NineOfTen ? "ready by then nine times in ten"
            : packed <= by.Half ? "more likely ready by then than not"
            : target.P10 is { } early && packed.PlusDays((int)Math.Ceiling(early)) <= date ? "perhaps ready by then, rather not"
                : "not ready by then, as expected";
    }

    /// <summary>How it stands on the day it would be chilled.</summary>
    public static string AtChilling(CoursePoint then, PassageDays line, double day) => string.Create(CultureInfo.InvariantCulture,
        $"about pH {then.Ph.P50:0.0} ({then.Ph.P10:0.0} to {then.Ph.P90:0.0}) and {then.AcidityPercentLactic.P50:0.0} % acid then; "
        + $"{LineAt(line, day)}.");

    private static string LineAt(PassageDays line, double day) =>
        line.P90 <= day ? "below 4.6 nine times in ten"
        : line.P50 <= day ? "below 4.6 more likely than not"
        : "not below 4.6 yet, as expected: cold makes that later still";

    /// <summary>Gas still to come, and how often a closed lid is to be opened for it.</summary>
    public static string Gas(StillToCome ahead) => string.Create(CultureInfo.InvariantCulture,
        $"Gas still to come: about {Litres(ahead.GasLitres.Middle)}, below {Litres(ahead.GasLitres.Most)} nine times in ten; up to "
        + $"{Litres(ahead.MostLitresADay)} a day in the week ahead. {Opening(ahead.DaysToABar)}");

    /// <summary>Gas still to come once it is cold.</summary>
    public static string GasInTheCold(StillToCome ahead) =>
        $"Still to come there: about {Litres(ahead.GasLitres.Middle)} of gas, below {Litres(ahead.GasLitres.Most)} nine times in ten.";

    /// <summary>What is left to be soured.</summary>
    public static string Sugar(StillToCome ahead) => string.Create(CultureInfo.InvariantCulture,
        $"Sugar: about {ahead.SugarAtFirst:0.0} % at first, as the tables have it; {Range(ahead.SugarLeft.Least, ahead.SugarLeft.Most)} may be "
        + $"left, by the acid expected. How sweet one head is differs by as much.");

    /// <summary>When it is best eaten; null where nothing is published of its vegetable, or the window is not within the forecast.</summary>
    public static string? BestEaten(Jar jar, IReadOnlyList<CoursePoint> course, ForecastCalendar calendar)
    {
        List<CoursePoint> within = [.. course.Where(point => point.AcidityPercentLactic.P50 is >= KimchiFrom and <= KimchiUpTo)];
        if (!TestedRecipe.IsKimchi(jar) || within.Count == 0)
            return null;
        LocalDate from = calendar.Date(within[0].Day), until = calendar.Date(within[^1].Day);
        string when = until < calendar.Today ? $"that was {DateWords.When(from, calendar.Today)} to {DateWords.Name(until, calendar.Today)}"
            : $"about {DateWords.Name(LocalDate.Max(from, calendar.Today), calendar.Today)} to {DateWords.Name(until, calendar.Today)}, by its "
                + "middle course";
        return $"Best eaten, as published for kimchi at 0.40 to 0.75 % acid (Chang & Kim 2000): {when}.";
    }

    /// <summary>Sodium in a serving, from the salt that went in.</summary>
    public static string Sodium(Jar jar)
    {
        string milligrams = jar.Salting.Percent is { } percent ? $"about {Milligrams(percent)}" : $"{Milligrams(1.5)} to {Milligrams(3.5)}";
        return $"Sodium: {milligrams} mg in a serving of 30 g (21 CFR 101.12, pickles, from memory), evenly taken up. WHO 2012 asks adults to stay "
            + "below 2000 mg a day.";
    }

    private static string Range(double least, double most) => most - least < 0.05
        ? string.Create(CultureInfo.InvariantCulture, $"{most:0.0} %") : string.Create(CultureInfo.InvariantCulture, $"{least:0.0} to {most:0.0} %");

    private static string Milligrams(double saltPercent) =>
        (Math.Round(saltPercent / 100 * ServingGrams * SodiumShare * 100) * 10).ToString("0", CultureInfo.InvariantCulture);

    private static string Litres(double litres) => litres < 0.095
        ? string.Create(CultureInfo.InvariantCulture, $"{Math.Ceiling(litres * 100) * 10:0} ml")
            : string.Create(CultureInfo.InvariantCulture, $"{litres:0.0} l");

    private static string Opening(double daysToABar) => "Under a closed lid: let it out " + daysToABar switch
    {
        < 0.75 => "twice a day.",
        < 1.5 => "once a day.",
        < 3.5 => "every other day.",
        _ => "once a week.",
    };
}
