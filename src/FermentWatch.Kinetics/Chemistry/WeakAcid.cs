namespace FermentWatch.Kinetics.Chemistry;

/// <summary>
/// Mean negative charge of a weak acid and the variance of that charge over its forms. The variance is the slope of the
/// charge against -ln H: no derivative has to be written out.
/// </summary>
internal static class WeakAcid
{
    public static (double Charge, double Variance) One(double k1, double h)
    {
        double charge = k1 / (k1 + h);
        return (charge, charge * (1 - charge));
    }

    public static (double Charge, double Variance) Two(double k1, double k2, double h)
    {
        double one = k1 * h;
        double two = k1 * k2;
        double all = (h * h) + one + two;
        double charge = (one + (2 * two)) / all;
        return (charge, ((one + (4 * two)) / all) - (charge * charge));
    }

    public static (double Charge, double Variance) Three(double k1, double k2, double k3, double h)
    {
        double one = k1 * h * h;
        double two = k1 * k2 * h;
        double three = k1 * k2 * k3;
        double all = (h * h * h) + one + two + three;
        double charge = (one + (2 * two) + (3 * three)) / all;
        return (charge, ((one + (4 * two) + (9 * three)) / all) - (charge * charge));
    }
}

/// <summary>What carries charge in a juice or brine, mol per litre of water.</summary>
/// <param name="StrongIonDifference">Strong cations less strong anions; salt adds as much to both.</param>
/// <param name="Lactic">Lactic acid and lactate.</param>
/// <param name="Acetic">Acetic acid and acetate.</param>
/// <param name="Malic">Malic acid and its ions.</param>
/// <param name="Citric">Citric acid and its ions.</param>
/// <param name="Phosphate">Phosphate in all its forms.</param>
/// <param name="SideChain">Acid side chains of amino acids and other weak acids near pKa 4.25.</param>
/// <param name="Salt">Sodium chloride, for the ionic strength.</param>
public sealed record AcidMixture(
    double StrongIonDifference, double Lactic, double Acetic, double Malic, double Citric, double Phosphate, double SideChain, double Salt)
{
    /// <summary>Ionic strength, mol/L: the salt, and the strong ions with the anions that balance them.</summary>
    public double IonicStrength => Salt + Math.Abs(StrongIonDifference);

    /// <summary>Both mixtures poured together, by their shares of the water.</summary>
    public AcidMixture MixedWith(AcidMixture other, double otherShare)
    {
        double own = 1 - otherShare;
        return new(
            (own * StrongIonDifference) + (otherShare * other.StrongIonDifference), (own * Lactic) + (otherShare * other.Lactic),
            (own * Acetic) + (otherShare * other.Acetic), (own * Malic) + (otherShare * other.Malic),
            (own * Citric) + (otherShare * other.Citric), (own * Phosphate) + (otherShare * other.Phosphate),
            (own * SideChain) + (otherShare * other.SideChain), (own * Salt) + (otherShare * other.Salt));
    }
}
