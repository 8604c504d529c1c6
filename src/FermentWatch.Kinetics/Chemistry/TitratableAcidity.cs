namespace FermentWatch.Kinetics.Chemistry;

/// <summary>Acidity as the laboratory measures it: base needed to bring a mixture to pH 8.2, native acids included.</summary>
public static class TitratableAcidity
{
    /// <summary>pH of the end point (AOAC 942.15 titrates to 8.1 to 8.2, from memory).</summary>
    public const double EndPointPh = 8.2;

    /// <summary>Grams of lactic acid in 100 mL that one mol/L of base stands for (milliequivalent weight 0.0901).</summary>
    public const double PercentLacticPerMole = 9.008;

    /// <summary>Base needed, mol/L. The sample is diluted for titration: constants at ionic strength 0.1 and 25 C.</summary>
    public static double MolesPerLitre(AcidMixture mixture)
    {
        DissociationConstants constants = DissociationConstants.At(0.1);
        (double excess, _) = ChargeBalance.Excess(mixture, constants, 25, Math.Pow(10, -EndPointPh));
        return -excess;
    }

    /// <summary>The same as per cent lactic acid (g per 100 mL).</summary>
    public static double PercentLactic(AcidMixture mixture) => PercentLacticPerMole * MolesPerLitre(mixture);

    /// <summary>From a titration: mL of base x normality x 0.0901 x 100 / grams of sample.</summary>
    public static double PercentLacticFromTitration(double baseMillilitres, double normality, double sampleGrams) =>
        baseMillilitres * normality * 0.0901 * 100 / sampleGrams;
}
