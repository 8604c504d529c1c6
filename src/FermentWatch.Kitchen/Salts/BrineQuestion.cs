using System.Globalization;
using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Kitchen.Salts;

/// <summary>What is asked about a brine and a hydrometer, as typed: a reading, or the per cent that it should have.</summary>
public sealed record BrineForm
{
    /// <summary>What the hydrometer is marked in, a name of <see cref="BrineScale"/>; empty is specific gravity.</summary>
    public string? Scale { get; init; }

    /// <summary>What it shows, or showed: specific gravity such as 1.034, degrees salometer or degrees Baumé.</summary>
    public string? Reading { get; init; }

    /// <summary>How warm the brine is; empty is 20 °C.</summary>
    public string? Temperature { get; init; }

    /// <summary>The temperature that stands on the hydrometer; empty is 20 °C for specific gravity and 60 °F for the others.</summary>
    public string? MadeFor { get; init; }

    /// <summary>Salt that the brine should have, per cent by mass; asked instead of a reading.</summary>
    public string? Percent { get; init; }

    /// <summary>Whether nothing is asked.</summary>
    public bool IsEmpty => string.IsNullOrWhiteSpace(Reading) && string.IsNullOrWhiteSpace(Percent);
}

/// <summary>A brine of salt and water, with what each hydrometer shows in it.</summary>
/// <param name="Percent">Salt, per cent by mass of the brine, 0 to 26.395.</param>
/// <param name="GramsInALitreOfWater">Salt for each litre of water of which it is made, g.</param>
/// <param name="GramsPerLitre">Salt in a litre of the brine at 20 C, g.</param>
/// <param name="BrineCelsius">How warm it is, C.</param>
/// <param name="Shown">What each scale shows in it at that temperature, each with the temperature it is made for, C.</param>
/// <param name="WasRead">Whether the per cent were read from a hydrometer, rather than asked for.</param>
public sealed record BrineShown(double Percent, double GramsInALitreOfWater, double GramsPerLitre, double BrineCelsius,
    IReadOnlyList<(BrineScale Scale, double Reading, double MadeForCelsius)> Shown, bool WasRead)
{
    private const double LitreOfWaterGrams = 998.2;

    /// <summary>What juices do to a reading; said with every answer.</summary>
    public const string JuicesDisturb = "Only for salt and water alone. Juice of cucumbers, cabbage and others carries sugar and acid, which a "
        + "hydrometer shows as if they were salt: each per cent of sugar reads as about half a per cent of salt, so that raw cabbage juice, with "
        + "3 % of sugar, shows 1.7 % too much. In a jar it tells nothing certain; measure the brine before it is poured on.";

    /// <summary>Reads and answers a question, or tells every field that is wrong.</summary>
    public static (BrineShown? Brine, IReadOnlyList<Refusal> Refusals) For(BrineForm form, Household household)
    {
        var reader = new FieldReader();
        BrineScale scale = reader.ReadChoice("scale", form.Scale, BrineScale.SpecificGravity);
        double brine = ReadCelsius("temperature", form.Temperature, 20, household, reader);
        double madeFor = ReadCelsius("made for", form.MadeFor, BrineHydrometer.UsualCelsius(scale), household, reader);
        bool isReading = !string.IsNullOrWhiteSpace(form.Reading);
        if (isReading == !string.IsNullOrWhiteSpace(form.Percent))
            reader.Refuse("reading", isReading ? $"{form.Reading} and {form.Percent} %" : null,
                "either what the hydrometer shows or the per cent of salt that is wanted would be right");
        if (reader.Refusals.Count > 0)
            return (null, reader.Refusals);
        double percent = isReading ? ReadReading(form, scale, brine, madeFor, reader)
            : reader.Read("percent", form.Percent, Amount.Percent, "%", 0, 26, "0 to 26 % by mass");
        return reader.Refusals.Count > 0 ? (null, reader.Refusals)
            : (Of(percent, brine, each => each == scale ? madeFor : BrineHydrometer.UsualCelsius(each), isReading), []);
    }

    private static BrineShown Of(double percent, double brineCelsius, Func<BrineScale, double> madeFor, bool wasRead) => new(percent,
        SaltArithmetic.GramsForBrine(LitreOfWaterGrams, Math.Min(percent, SaltArithmetic.MostPercent)),
        BrineDensity.GramsPerLitre(Math.Min(percent, SaltArithmetic.MostPercent)), brineCelsius,
        [.. Enum.GetValues<BrineScale>().Select(scale =>
            (scale, BrineHydrometer.ReadingOf(scale, percent, brineCelsius, madeFor(scale)), madeFor(scale)))], wasRead);

    private static double ReadCelsius(string field, string? typed, double ifEmpty, Household household, FieldReader reader)
    {
        bool isFahrenheit = household.TemperatureUnit == TemperatureUnit.Fahrenheit;
        return string.IsNullOrWhiteSpace(typed) ? ifEmpty
            : reader.Read(field, typed, Amount.Celsius, isFahrenheit ? "F" : "C", BrineHydrometer.ColdestCelsius, BrineHydrometer.WarmestCelsius,
                "0 to 40 °C (32 to 104 °F)");
    }

    /// <summary>A reading a little below that of water is water, since no scale is read more finely; further below nothing is salt water.</summary>
    private static double ReadReading(BrineForm form, BrineScale scale, double brine, double madeFor, FieldReader reader)
    {
        const double readFinely = 0.3;
        double highest = BrineHydrometer.HighestReading(scale, madeFor);
        string range = scale == BrineScale.SpecificGravity
            ? string.Create(CultureInfo.InvariantCulture, $"specific gravity from 1.000 to {highest:0.000}")
            : string.Create(CultureInfo.InvariantCulture, $"0 to {highest:0.#} degrees {BrineWords.Of(scale)}");
        double shown = reader.Read("reading", form.Reading, Amount.Number, null, scale == BrineScale.SpecificGravity ? 0.99 : -2, highest, range);
        double percent = BrineHydrometer.PercentFrom(scale, shown, brine, madeFor);
        if (reader.Refusals.Count == 0 && (percent < -readFinely || percent > BrineHydrometer.SaturatedPercent + readFinely))
            reader.Refuse("reading", form.Reading, $"a reading that salt water of that temperature can show would be right: {range}");
        return Math.Clamp(percent, 0, BrineHydrometer.SaturatedPercent);
    }
}

/// <summary>Brines in words.</summary>
public static class BrineWords
{
    /// <summary>A scale as people call it.</summary>
    public static string Of(BrineScale scale) => scale switch
    {
        BrineScale.SpecificGravity => "specific gravity",
        BrineScale.Salometer => "salometer",
        _ => "Baumé",
    };

    /// <summary>A reading with its unit: <c>1.034</c>, <c>18.9° salometer</c>, <c>4.8° Baumé</c>.</summary>
    public static string Of(BrineScale scale, double reading) => scale == BrineScale.SpecificGravity
        ? reading.ToString("0.000", CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{reading:0.0}° {Of(scale)}");
}
