namespace FermentWatch.Kinetics.Chemistry;

/// <summary>
/// Apparent dissociation constants (mol/L, hydrogen ion as activity) of the acids of a ferment at an ionic strength. pKa at
/// zero ionic strength: lactic 3.857 + 5e-5 (T - 22.5)^2 (Martin and Tartar, as in the ECHA dossier for lactic acid), acetic
/// 4.756 (CRC Handbook), malic 3.40 and 5.20 (aqion database), citric 3.13, 4.76 and 6.40, phosphoric 2.15 and 7.20,
/// glutamic side chain 4.25 and water 13.995 (CRC Handbook, from memory). Activity by the Davies equation.
/// </summary>
internal readonly record struct DissociationConstants(
    double Lactic, double Acetic, double Malic1, double Malic2,
    double Citric1, double Citric2, double Citric3,
    double Phosphoric1, double Phosphoric2, double SideChain, double Water, double HydrogenActivityCoefficient)
{
    /// <summary>Lactic is given for 22.5 C; <see cref="LacticAt"/> moves it.</summary>
    public static DissociationConstants At(double ionicStrength)
    {
        double shift = Davies.UnitExponent(ionicStrength);
        return new(
            Power(3.857 - shift), Power(4.756 - shift), Power(3.40 - shift), Power(5.20 - (3 * shift)),
            Power(3.13 - shift), Power(4.76 - (3 * shift)), Power(6.40 - (5 * shift)),
            Power(2.15 - shift), Power(7.20 - (3 * shift)), Power(4.25 - shift), Power(13.995 - shift), Math.Pow(10, -shift));
    }

    /// <summary>The lactic constant at a temperature, -5 to 45 Celsius.</summary>
    public double LacticAt(double celsius) => Lactic * Math.Pow(10, -5e-5 * (celsius - 22.5) * (celsius - 22.5));

    private static double Power(double pKa) => Math.Pow(10, -pKa);
}

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
