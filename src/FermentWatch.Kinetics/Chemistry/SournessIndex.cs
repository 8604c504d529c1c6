namespace FermentWatch.Kinetics.Chemistry;

/// <summary>
/// How sour it tastes: protonated acids plus free hydrogen ion, mole for mole (Da Conceicao Neta et al. 2007, J. Food Sci.
/// 72:S352-S359). Counted here are the ferment's own acids, lactic and acetic; what the vegetable brought is in every
/// jar of it and in nobody's scale.
/// </summary>
public static class SournessIndex
{
    /// <summary>mmol/L of protonated lactic and acetic acid and free hydrogen ion at the mixture's own pH.</summary>
    public static double MillimolesPerLitre(AcidMixture mixture, double celsius)
    {
        DissociationConstants k = DissociationConstants.At(mixture.IonicStrength);
        double h = Math.Pow(10, -ChargeBalance.Ph(mixture, celsius));
        double lactic = mixture.Lactic * h / (h + k.LacticAt(celsius));
        double acetic = mixture.Acetic * h / (h + k.Acetic);
        return 1000 * (lactic + acetic + (h / k.HydrogenActivityCoefficient));
    }

    /// <summary>The same from titratable lactic acid and a pH, as far as those two tell: for a scale in plain words.</summary>
    public static double FromAcidityAndPh(double percentLactic, double ph)
    {
        DissociationConstants k = DissociationConstants.At(0.1);
        double h = Math.Pow(10, -ph);
        return 1000 * ((percentLactic / TitratableAcidity.PercentLacticPerMole * h / (h + k.Lactic)) + h);
    }
}
