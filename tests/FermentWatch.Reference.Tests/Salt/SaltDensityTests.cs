using FermentWatch.Kinetics.Salt;
using FermentWatch.Reference.Tests.Published;

namespace FermentWatch.Reference.Tests.Salt;

/// <summary>salt_density.csv: Poradnik fizykochemiczny 1974 and, for 3 and 5 %, the CRC Handbook from memory.</summary>
public class SaltDensityTests
{
    public static TheoryData<double, double, double> Rows()
    {
        var rows = new TheoryData<double, double, double>();
        foreach (IReadOnlyDictionary<string, string> row in Figures.Read("salt_density.csv"))
            rows.Add(Figures.Number(row, "percent_by_mass"), Figures.Number(row, "g_per_litre_20c"), Figures.Number(row, "density_20c_kg_m3"));
        return rows;
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Density_EveryRow_IsReproduced(double percent, double gramsPerLitre, double density)
    {
        Assert.Equal(density, BrineDensity.KilogramsPerCubicMetre(percent), 0.1);
        Assert.InRange(BrineDensity.GramsPerLitre(percent), gramsPerLitre * 0.9998, gramsPerLitre * 1.0002);
        Assert.InRange(BrineDensity.MolesPerLitre(percent), gramsPerLitre / 58.443 * 0.9998, gramsPerLitre / 58.443 * 1.0002);
    }
}
