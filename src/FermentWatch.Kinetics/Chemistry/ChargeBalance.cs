namespace FermentWatch.Kinetics.Chemistry;

/// <summary>
/// pH from electroneutrality: strong-ion difference + [H+] - [OH-] equals the charge of all weak acids. In the logarithm of
/// the hydrogen ion activity the balance rises everywhere, so a Newton step kept inside a bracket always arrives.
/// </summary>
public static class ChargeBalance
{
    private const int MostSteps = 60;
    private const double ToleranceLn = 1e-12;

    /// <summary>pH of a mixture at a temperature, between 1 and 14.</summary>
    /// <param name="mixture">Concentrations, mol/L, all finite.</param>
    /// <param name="celsius">Temperature, -5 to 45 Celsius.</param>
    public static double Ph(AcidMixture mixture, double celsius)
    {
        DissociationConstants constants = DissociationConstants.At(mixture.IonicStrength);
        double low = -14 * Math.Log(10);
        double high = -Math.Log(10);
        double x = -4 * Math.Log(10);
        for (int i = 0; i < MostSteps; i++)
        {
            (double excess, double slope) = Excess(mixture, constants, celsius, Math.Exp(x));
            if (excess > 0)
                high = x;
            else
                low = x;
            double next = x - (excess / slope);
            if (!(next > low && next < high))
                next = 0.5 * (low + high);
            if (Math.Abs(next - x) < ToleranceLn)
                break;
            x = next;
        }
        return -x / Math.Log(10);
    }

    /// <summary>Charge left over at a hydrogen ion activity, and its slope in ln H.</summary>
    internal static (double Excess, double Slope) Excess(AcidMixture m, DissociationConstants k, double celsius, double h)
    {
        double free = h / k.HydrogenActivityCoefficient;
        double hydroxide = k.Water / h;
        double excess = m.StrongIonDifference + free - hydroxide;
        double slope = free + hydroxide;
        Take(m.Lactic, WeakAcid.One(k.LacticAt(celsius), h), ref excess, ref slope);
        Take(m.Acetic, WeakAcid.One(k.Acetic, h), ref excess, ref slope);
        Take(m.Malic, WeakAcid.Two(k.Malic1, k.Malic2, h), ref excess, ref slope);
        Take(m.Citric, WeakAcid.Three(k.Citric1, k.Citric2, k.Citric3, h), ref excess, ref slope);
        Take(m.Phosphate, WeakAcid.Two(k.Phosphoric1, k.Phosphoric2, h), ref excess, ref slope);
        Take(m.SideChain, WeakAcid.One(k.SideChain, h), ref excess, ref slope);
        return (excess, slope);
    }

    private static void Take(double concentration, (double Charge, double Variance) acid, ref double excess, ref double slope)
    {
        excess -= concentration * acid.Charge;
        slope += concentration * acid.Variance;
    }
}
