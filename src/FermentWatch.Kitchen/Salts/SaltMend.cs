using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.PuttingUp;
using NodaTime;

namespace FermentWatch.Kitchen.Salts;

/// <summary>What a jar that was salted wrongly needs to come back to what was intended; arithmetic, and no word about what has grown in it.</summary>
/// <param name="NowPercent">Salt in it, per cent of vegetables and added water together; null where nobody knows.</param>
/// <param name="WantedPercent">What it is brought to: as intended, but never below the least for its vegetable.</param>
/// <param name="Range">Between what nothing need be done.</param>
/// <param name="Lateness">Whether it is late for that.</param>
/// <param name="Adding">Salt to add; null where none is, and where the jar should be thrown out.</param>
/// <param name="Taking">Salt to take out; null likewise.</param>
/// <param name="IfItWere">Where nobody knows how much went in: what would be taken out if it were so many per cent.</param>
/// <param name="HoursUntilEven">How long salt takes to even out between brine and pieces, h.</param>
/// <param name="EvenAt">When what went in at packing has evened out.</param>
public sealed record SaltMend(double? NowPercent, double WantedPercent, SaltRange Range, SaltLateness Lateness, SaltToAdd? Adding, SaltToTake? Taking,
    IReadOnlyList<(double Percent, SaltToTake Taking)> IfItWere, double HoursUntilEven, Instant EvenAt)
{
    /// <summary>Works it out.</summary>
    /// <param name="jar">The jar as it is on record.</param>
    /// <param name="question">What happened.</param>
    /// <param name="place">Where it stands.</param>
    /// <param name="now">The present.</param>
    public static SaltMend For(Jar jar, MendQuestion question, Place place, Instant now)
    {
        string main = TestedRecipe.Main(jar);
        double wanted = Math.Max(question.IntendedPercent, SaltRange.LowestFor(main));
        SaltRange range = SaltRange.Around(main, wanted);
        double hours = SaltEvening.HoursUntilEven(jar.Cut);
        SaltLateness lateness = LatenessOf(question.WentInPercent, now - jar.PackedAt, place);
        bool mayMend = lateness != SaltLateness.ThrowOut;
        return new SaltMend(question.WentInPercent, wanted, range, lateness,
            mayMend && question.WentInPercent < range.LowestPercent ? SaltToAdd.For(jar, question.WentInPercent.Value, wanted) : null,
            mayMend && question.WentInPercent > range.HighestPercent ? SaltToTake.For(jar, question.WentInPercent.Value, wanted) : null,
            question.WentInPercent is null
                ? [.. Enumerable.Range(3, 6).Select(percent => (double)percent).Where(percent => percent > range.HighestPercent)
                    .Select(percent => (percent, SaltToTake.For(jar, percent, wanted)))]
                : [],
            hours, jar.PackedAt + Duration.FromHours(hours));
    }

    /// <summary>Whether it is within the range, so that nothing need be done.</summary>
    public bool IsWithin => NowPercent >= Range.LowestPercent && NowPercent <= Range.HighestPercent;

    /// <summary>
    /// Below the least that anything is forecast of, time counts. Next to no salt for more than a day at room temperature is thrown out: common
    /// practice, no source. Less than half of the least counts as next to none: this project's own figure.
    /// </summary>
    private static SaltLateness LatenessOf(double? percent, Duration age, Place place)
    {
        const double least = Kinetics.Recipe.SaltDose.LowestPercent;
        if (!(percent < least) || age <= Duration.FromHours(24))
            return SaltLateness.InTime;
        if (place.Typical == TypicalTemperature.ColdStore)
            return SaltLateness.LateInTheCold;
        return percent < least / 2 ? SaltLateness.ThrowOut : SaltLateness.Late;
    }
}

/// <summary>Whether it is late to put salt right.</summary>
public enum SaltLateness
{
    /// <summary>Not late: enough salt all the time, or packed within a day.</summary>
    InTime = 1,

    /// <summary>Too little salt for more than a day.</summary>
    Late = 2,

    /// <summary>Too little salt for more than a day, and it stands in the cold.</summary>
    LateInTheCold = 3,

    /// <summary>Next to no salt for more than a day at room temperature.</summary>
    ThrowOut = 4,
}

/// <summary>Salt to add to a jar.</summary>
/// <param name="SaltGrams">Dissolved in the jar's own brine, drawn off and poured back, g.</param>
/// <param name="BrineGrams">Or as strong brine poured on, g of it.</param>
/// <param name="BrineSaltGrams">Salt in that brine, g.</param>
/// <param name="BrineWaterGrams">Water in it, g.</param>
/// <param name="BrineFits">Whether it fits into the vessel beside what is in it.</param>
public sealed record SaltToAdd(double SaltGrams, double BrineGrams, double BrineSaltGrams, double BrineWaterGrams, bool BrineFits)
{
    /// <summary>How strong that brine is, per cent by mass: strong, so that little water comes along, and yet below what water holds.</summary>
    public const double BrinePercent = 20;

    /// <summary>Works it out.</summary>
    /// <param name="jar">The jar.</param>
    /// <param name="nowPercent">Salt in it, per cent of vegetables and added water.</param>
    /// <param name="wantedPercent">What it is to have.</param>
    public static SaltToAdd For(Jar jar, double nowPercent, double wantedPercent)
    {
        double lacking = Contents.Of(jar).SaltGrams(wantedPercent) - Contents.Of(jar).SaltGrams(nowPercent);
        double share = BrinePercent / 100;
        // The water of the brine is to be salted as well.
        double brine = lacking / (share - (wantedPercent / 100 * (1 - share)));
        return new SaltToAdd(lacking, brine, share * brine, (1 - share) * brine,
            Contents.Of(jar).FitsWith(jar, brine / 1000));
    }
}

/// <summary>Salt to take out of a jar, in one of two ways.</summary>
/// <param name="BrineOutGrams">Brine to pour off each time, g.</param>
/// <param name="WaterInGrams">Unsalted water to put in its place each time, g.</param>
/// <param name="Times">How often, each time after it has evened out again; null where that would be more often than is any use.</param>
/// <param name="VegetablesGrams">Or unsalted vegetables of the same kind to mix in, g.</param>
/// <param name="VegetablesFit">Whether they fit into the vessel.</param>
public sealed record SaltToTake(double BrineOutGrams, double WaterInGrams, int? Times, double VegetablesGrams, bool VegetablesFit)
{
    // Pieces must not stand dry meanwhile, and what clings cannot be poured: at most half of the loose brine at a time. Both are this
    // project's own figures.
    private const double ShareOfLooseBrine = 0.5;
    private const int MostTimes = 4;

    /// <summary>Works it out for brine that has evened out.</summary>
    /// <param name="jar">The jar.</param>
    /// <param name="nowPercent">Salt in it, per cent of vegetables and added water.</param>
    /// <param name="wantedPercent">What it is to have, below that.</param>
    public static SaltToTake For(Jar jar, double nowPercent, double wantedPercent)
    {
        var contents = Contents.Of(jar);
        double brine = contents.WaterGrams + contents.SaltGrams(nowPercent);
        double most = Math.Min(0.9, ShareOfLooseBrine * contents.LooseBrineGrams / brine);
        double left = wantedPercent / nowPercent;
        int times = Math.Max(1, (int)Math.Ceiling(Math.Log(left) / Math.Log(1 - most)));
        double out1 = (1 - Math.Pow(left, 1.0 / times)) * brine;
        double vegetables = (contents.SaltGrams(nowPercent) / (10 * wantedPercent)) - contents.SaltedKilograms;
        return new SaltToTake(out1, out1 * contents.WaterGrams / brine, times > MostTimes ? null : times, 1000 * vegetables,
            contents.FitsWith(jar, vegetables));
    }
}

/// <summary>What of a jar counts for its salt.</summary>
/// <param name="SaltedKilograms">Vegetables and added water, of which the per cent are, kg.</param>
/// <param name="WaterGrams">All the water in it, that of the vegetables too, in which salt evens out, g.</param>
/// <param name="LooseBrineGrams">Brine between the pieces, g.</param>
/// <param name="Kilograms">All of it, kg.</param>
internal sealed record Contents(double SaltedKilograms, double WaterGrams, double LooseBrineGrams, double Kilograms)
{
    public static Contents Of(Jar jar)
    {
        double vegetables = jar.Portions.Sum(portion => portion.MassKilograms);
        double inVegetables = jar.Portions.Sum(portion => portion.MassKilograms * SaltEvening.WaterShare(portion.Produce));
        double added = jar.AddedWaterKilograms + (jar.Starter?.MassKilograms ?? 0) + (jar.Vinegar?.MassKilograms ?? 0);
        return new Contents(vegetables + jar.AddedWaterKilograms, 1000 * (inVegetables + added),
            1000 * SaltEvening.LooseBrineKilograms(jar.Cut, inVegetables, added), vegetables + added);
    }

    /// <summary>Whether so many kg more are no more than what a jar is put up with unasked.</summary>
    public bool FitsWith(Jar jar, double kilograms) => Kilograms + kilograms <= Plausibility.MostFill * jar.VesselLitres;

    /// <summary>Salt that so many per cent are, g.</summary>
    public double SaltGrams(double percent) => SaltArithmetic.GramsFor(SaltedKilograms, 0, percent);
}
