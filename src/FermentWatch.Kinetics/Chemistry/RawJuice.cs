using FermentWatch.Kinetics.Produce;

namespace FermentWatch.Kinetics.Chemistry;

/// <summary>
/// Juice of a raw vegetable per litre of its water. The strong-ion difference is K + Na + 2 Ca + 2 Mg less a share for the
/// chloride, sulphate and nitrate that the composition tables do not give; weak acids the tables do not give either are
/// side chains of pKa 4.25, as many as bring the juice to its raw pH.
/// </summary>
internal static class RawJuice
{
    /// <summary>Ionic strength of raw juice, mol/L.</summary>
    private const double IonicStrength = 0.1;

    public static AcidMixture Of(Vegetable vegetable, double strongShare)
    {
        Composition c = vegetable.Composition;
        double perLitre = 1 / c.WaterGrams;
        double minerals = perLitre * ((c.PotassiumMilligrams / 39.10) + (c.SodiumMilligrams / 22.99)
            + (2 * c.CalciumMilligrams / 40.08) + (2 * c.MagnesiumMilligrams / 24.31));
        double malic = vegetable.MalicMillimolesPerKilogram / (10 * c.WaterGrams);
        double citric = vegetable.CitricMillimolesPerKilogram / (10 * c.WaterGrams);
        double phosphate = perLitre * c.PhosphorusMilligrams / 30.97;
        return WithSideChains(new(strongShare * minerals, 0, 0, malic, citric, phosphate, 0, 0), vegetable.RawPh, 0.008 * c.ProteinGrams);
    }

    private static AcidMixture WithSideChains(AcidMixture known, double rawPh, double least)
    {
        DissociationConstants k = DissociationConstants.At(IonicStrength);
        double h = Math.Pow(10, -rawPh);
        (double missing, _) = ChargeBalance.Excess(known, k, 20, h);
        double charge = WeakAcid.One(k.SideChain, h).Charge;
        double sideChain = missing / charge;
        return sideChain >= least
            ? known with { SideChain = sideChain }
            // The known acids hold more charge than the minerals: then the minerals were taken too low.
            : known with { SideChain = least, StrongIonDifference = known.StrongIonDifference - missing + (least * charge) };
    }

    /// <summary>Hexose, mol per litre of the vegetable's water.</summary>
    public static double Hexose(Vegetable vegetable) => vegetable.Composition.SugarsGrams / 180.16 / vegetable.Composition.WaterGrams * 1000;
}
