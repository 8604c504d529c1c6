using FermentWatch.Kinetics.Guilds;

namespace FermentWatch.Reference.Tests.Published;

/// <summary>
/// A row of growth_rates.csv: Dalcanton et al. 2018, J. Food Quality 1726761, table 1, Lactiplantibacillus plantarum ATCC
/// 8014 in laboratory broth, which grows by a rate of its own; everything else is the finishers' term of the model.
/// </summary>
internal sealed record GrowthRateRow(double Celsius, double Ph, double SaltPercent, double LactatePercent, double RatePerHour)
{
    /// <summary>Molar mass of sodium lactate, g/mol.</summary>
    private const double SodiumLactateGrams = 112.06;

    private const double LacticPKa = 3.76;

    /// <summary>All rows.</summary>
    public static IReadOnlyList<GrowthRateRow> All { get; } =
    [
        .. Figures.Read("growth_rates.csv").Select(row => new GrowthRateRow(
            Figures.Number(row, "temperature_c"), Figures.Number(row, "ph"), Figures.Number(row, "salt_percent"),
            Figures.Number(row, "sodium_lactate_percent"), Figures.Number(row, "mu_per_hour"))),
    ];

    /// <summary>The finishers' share of their optimum rate in that broth.</summary>
    /// <param name="model">The model.</param>
    /// <param name="totalLactate">Whether lactate in whatever form counts, beside the undissociated acid.</param>
    public double ShareOfOptimum(ModelParameters model, bool totalLactate = true)
    {
        Guild finishers = model.Guilds[2];
        double lactate = 10 * LactatePercent / SodiumLactateGrams;
        double undissociated = lactate / (1 + Math.Pow(10, Ph - LacticPKa));
        CardinalTemperatures temperatures =
            finishers.Temperature with { Minimum = finishers.Temperature.Minimum + (finishers.SaltChill * SaltPercent) };
        return temperatures.Share(Celsius)
            * SaltTerm.Share(SaltPercent, finishers.SaltLimitPercent, model.SaltPower)
            / (1 + Math.Pow(10, model.PhSteepness * (finishers.HalfPh - Ph)))
            / (1 + Math.Pow(undissociated / finishers.HalfAcidMolesPerLitre, 3))
            * (totalLactate ? Math.Max(0, 1 - (lactate / model.LacticLimit)) : 1);
    }
}
