using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Produce;

namespace FermentWatch.Kinetics.Salt;

/// <summary>How salt evens out between brine and pieces, as the model moves everything that is dissolved.</summary>
public static class SaltEvening
{
    // What the pieces still lack of the difference there was: one part in twenty.
    private const double PartsThatAreLeft = 20;

    /// <summary>Water in a vegetable that the catalogue does not know, share of its mass: most hold 85 to 96 % (USDA SR, from memory).</summary>
    private const double UsualWaterShare = 0.91;

    /// <summary>Hours until nineteen parts in twenty have moved: from 7 for shreds to 228 for whole vegetables
    /// (rates of exchange: <c>PARAMETERS.md</c>).</summary>
    public static double HoursUntilEven(Cut cut) => Math.Log(PartsThatAreLeft) / CalibratedParameters.Values.ExchangePerHour[(int)cut];

    /// <summary>Water in a vegetable, share of its mass.</summary>
    public static double WaterShare(string produce) =>
        Vegetable.TryFind(produce, out Vegetable? vegetable) ? vegetable.Composition.WaterGrams / 100 : UsualWaterShare;

    /// <summary>Brine that stands between the pieces and can be poured off, kg: what was added, and the juice that the salt draws.</summary>
    /// <param name="cut">How the vegetables were cut.</param>
    /// <param name="produceWaterKilograms">Water in the vegetables, kg.</param>
    /// <param name="addedKilograms">Water, vinegar and starter brine that were added, kg.</param>
    public static double LooseBrineKilograms(Cut cut, double produceWaterKilograms, double addedKilograms) =>
        addedKilograms + (CalibratedParameters.Values.DrawnJuice[(int)cut] * produceWaterKilograms);
}
