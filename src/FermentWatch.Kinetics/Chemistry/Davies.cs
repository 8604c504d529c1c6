namespace FermentWatch.Kinetics.Chemistry;

/// <summary>Activity of ions by the Davies equation (Davies 1962, Ion Association), good to an ionic strength of about 0.5 mol/L.</summary>
internal static class Davies
{
    /// <summary>Debye-Hueckel constant of water at 20 C, base 10.</summary>
    private const double A = 0.507;

    /// <summary>Minus log10 of the activity coefficient of an ion of charge one; times the charge squared for others.</summary>
    /// <param name="ionicStrength">mol/L, zero or more; above 1 the value at 1 is kept, beyond which the equation turns.</param>
    public static double UnitExponent(double ionicStrength)
    {
        double root = Math.Sqrt(Math.Clamp(ionicStrength, 0, 1));
        return A * ((root / (1 + root)) - (0.3 * root * root));
    }
}
