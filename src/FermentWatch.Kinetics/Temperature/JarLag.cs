namespace FermentWatch.Kinetics.Temperature;

/// <summary>How long a jar takes to follow its room: first-order, from the volume of the vessel.</summary>
public static class JarLag
{
    private const double HeatCapacityJoulesPerLitreKelvin = 3900;
    private const double SurfaceWattsPerSquareMetreKelvin = 9;

    /// <summary>
    /// Time constant in hours: heat capacity over surface of a cylinder as high as wide, times 9 W/m2K (still air, 8 to 10).
    /// About 2 h for a quart jar, 6 h for a crock of 5 gallons.
    /// </summary>
    /// <param name="vesselLitres">Volume, litres, above zero.</param>
    public static double TimeConstantHours(double vesselLitres)
    {
        if (!(vesselLitres > 0 && vesselLitres <= 1000))
            throw new ArgumentOutOfRangeException(nameof(vesselLitres), vesselLitres, "above 0 and at most 1000 litres is taken");
        double radius = Math.Cbrt(vesselLitres / 1000 / (2 * Math.PI));
        double surface = 6 * Math.PI * radius * radius;
        return HeatCapacityJoulesPerLitreKelvin * vesselLitres / (SurfaceWattsPerSquareMetreKelvin * surface) / 3600;
    }
}
