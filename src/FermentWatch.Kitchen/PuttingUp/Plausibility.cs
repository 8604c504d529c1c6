using System.Globalization;
using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Words;
using NodaTime;
using static FermentWatch.Kinetics.Sentence;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>
/// Whether what was typed fits together, before it is written. Fill: 5 lb a gallon, 0.6 kg a litre (Michigan State; Cornell), to
/// 25 lb in 9 quarts, 1.33 kg a litre as weighed (USDA Complete Guide to Home Canning, Guide 6). More than twice that goes into no
/// vessel; below a sixth of the least, or a date of long ago, is merely odd. The bounds of what is odd are this project's own.
/// </summary>
public static class Plausibility
{
    internal const double MostFill = 1.33;
    private const double UsualFill = 0.6, ImpossibleFill = 2 * MostFill, OddlyLittle = UsualFill / 6;
    private static readonly Duration LongAgo = Duration.FromDays(120);

    /// <summary>What cannot be: what was typed is refused, with what was probably meant.</summary>
    public static IEnumerable<Refusal> Impossible(Jar jar, MassUnit unit)
    {
        double kilograms = Filling(jar);
        if (kilograms > ImpossibleFill * jar.VesselLitres)
            yield return new Refusal("how much", MeasureWords.Mass(kilograms, unit), $"{FitsIn(jar, unit)}{Meant(jar, unit)}");
    }

    /// <summary>What is merely odd.</summary>
    public static IEnumerable<Doubt> Odd(Jar jar, MassUnit unit, Instant now, DateTimeZone zone)
    {
        double kilograms = Filling(jar);
        if (kilograms > MostFill * jar.VesselLitres)
            yield return new Doubt("how much",
                $"{MeasureWords.Mass(kilograms, unit)} in one vessel of {MeasureWords.Volume(jar.VesselLitres, unit)}? "
                + $"{Capital(FitsIn(jar, unit))}{Meant(jar, unit) ?? "."}");
        else if (kilograms < OddlyLittle * jar.VesselLitres)
            yield return new Doubt("how much",
                $"Only {MeasureWords.Mass(kilograms, unit)} in {MeasureWords.Volume(jar.VesselLitres, unit)}? "
                + $"{Capital(FitsIn(jar, unit))}{Meant(jar, unit) ?? "."}");
        if (jar is { Cut: Cut.Whole, AddedWaterKilograms: 0 })
            yield return new Doubt("added water",
                $"Whole {jar.Portions[0].Produce} gives no brine of its own: how much salt water went in? Such as "
                + $"{MeasureWords.Mass(0.4 * jar.VesselLitres, unit)}.");
        double salted = jar.Portions.Sum(portion => portion.MassKilograms) + jar.AddedWaterKilograms;
        string main = jar.Portions.MaxBy(portion => portion.MassKilograms)!.Produce;
        if (jar.Salting.Percent is { } percent && SaltLimits.Odd(main, percent, 1000 * salted) is { } oddlySalted)
            yield return oddlySalted;
        if (now - jar.PackedAt > LongAgo)
            yield return new Doubt("packed on", PackedLongAgo(jar.PackedAt.InZone(zone).Date, now.InZone(zone).Date));
    }

    /// <summary>A per cent of salt that is out of bounds by a slipped point; null where none is.</summary>
    public static double? MeantPercent(double typed) =>
        new double?[] { typed / 10, typed / 100, typed * 10 }.FirstOrDefault(percent => percent is >= 1.5 and <= 5);

    private static string PackedLongAgo(LocalDate packed, LocalDate today)
    {
        var meant = new LocalDate(today.Year, packed.Month, packed.Calendar.GetDaysInMonth(today.Year, packed.Month) < packed.Day ? 28 : packed.Day);
        string question = $"Packed on {packed.ToString("d MMMM uuuu", CultureInfo.InvariantCulture)}, {Period.DaysBetween(packed, today)} days ago?";
        return meant <= today && meant != packed ? $"{question} Was {meant.ToString("d MMMM uuuu", CultureInfo.InvariantCulture)} meant?" : question;
    }

    private static double Filling(Jar jar) =>
        jar.Portions.Sum(portion => portion.MassKilograms) + jar.AddedWaterKilograms + (jar.Starter?.MassKilograms
        ?? 0) + (jar.Vinegar?.MassKilograms ?? 0);

    private static string FitsIn(Jar jar, MassUnit unit) =>
        $"into {MeasureWords.Volume(jar.VesselLitres, unit)} go about {MeasureWords.Mass(UsualFill * jar.VesselLitres, unit)} to "
        + $"{MeasureWords.Mass(MostFill * jar.VesselLitres, unit)}";

    /// <summary>The same figures with a slipped unit or point, where that would fit.</summary>
    private static string? Meant(Jar jar, MassUnit unit)
    {
        double typed = jar.Portions[0].MassKilograms, others = Filling(jar) - typed;
        double[] slips = [typed / 1000, typed / 10, typed / 100, typed * 10];
        double meant = slips.FirstOrDefault(slip => (slip + others) / jar.VesselLitres is >= UsualFill / 3 and <= MostFill);
        return meant > 0 ? $". {MeasureWords.Mass(meant, unit)}?" : null;
    }
}
