using System.Globalization;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.PuttingUp;

namespace FermentWatch.Kitchen.Salts;

/// <summary>How a jar is put on record once its salt was put right in one way.</summary>
/// <param name="Words">Which way.</param>
/// <param name="Form">The fields of the correction that change; the others are null.</param>
/// <param name="Stands">Whether the record says so already.</param>
public sealed record MendedRecord(string Words, CorrectionForm Form, bool Stands)
{
    /// <summary>The ways there are; always also as it went in, where nothing was done.</summary>
    public static IReadOnlyList<MendedRecord> Of(Jar jar, SaltMend mend, Household household)
    {
        CorrectionForm salted = Salted(mend.WantedPercent);
        bool stands = jar.Salting.Knowledge == SaltKnowledge.Weighed && !Differs(jar, mend.WantedPercent);
        var records = new List<MendedRecord>();
        if (mend.Adding is { } adding)
        {
            records.Add(new("The salt was dissolved in its own brine", salted, stands));
            string water = Mass(jar.AddedWaterKilograms + (adding.BrineWaterGrams / 1000), household);
            records.Add(new("Brine was poured on", salted with { AddedWater = water }, Stands: false));
        }
        if (mend.Taking is { } taking)
        {
            if (taking.Times is not null)
                records.Add(new("Brine was replaced by water", salted, stands));
            string vegetables = Mass(jar.Portions[0].MassKilograms + (taking.VegetablesGrams / 1000), household);
            records.Add(new("Unsalted vegetables were mixed in", salted with { HowMuch = vegetables }, Stands: false));
        }
        // Salt above what a jar can be put up with cannot be put on record; it is to be thinned first.
        if (mend.NowPercent is { } now and <= Kinetics.Recipe.SaltDose.HighestPercent && Differs(jar, now))
            records.Add(new("Nothing was done: write down what went in", Salted(now), Stands: false));
        return records;
    }

    private static bool Differs(Jar jar, double percent) => jar.Salting.Percent is not { } known || Math.Abs(known - percent) >= 0.005;

    private static CorrectionForm Salted(double percent) => new()
    {
        Salt = string.Create(CultureInfo.InvariantCulture, $"{percent:0.##} %"), SaltKnowledge = nameof(SaltKnowledge.Weighed),
    };

    private static string Mass(double kilograms, Household household) => household.MassUnit == MassUnit.Pound
        ? string.Create(CultureInfo.InvariantCulture, $"{kilograms / CustomaryUnits.KilogramsPerPound:0.####} lb")
        : string.Create(CultureInfo.InvariantCulture, $"{1000 * kilograms:0} g");
}
