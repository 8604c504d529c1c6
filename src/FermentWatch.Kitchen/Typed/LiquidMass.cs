namespace FermentWatch.Kitchen.Typed;

/// <summary>Reads a liquid by mass or by volume.</summary>
public static class LiquidMass
{
    /// <summary>Density of water at 20 C, kg/L (general tables, from memory).</summary>
    public const double WaterKilogramsPerLitre = 0.9982;

    /// <summary>Reads <c>500g</c>, <c>1l</c> or <c>1qt</c> as kilograms.</summary>
    public static bool TryRead(string? typed, double kilogramsPerLitre, out double kilograms)
    {
        if (Amount.MassKilograms.TryRead(typed, null, out kilograms))
            return true;
        bool read = Amount.VolumeLitres.TryRead(typed, null, out double litres);
        kilograms = litres * kilogramsPerLitre;
        return read;
    }
}
