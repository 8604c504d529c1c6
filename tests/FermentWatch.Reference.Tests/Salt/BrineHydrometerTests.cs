using FermentWatch.Kinetics.Salt;
using FermentWatch.Reference.Tests.Published;

namespace FermentWatch.Reference.Tests.Salt;

/// <summary>
/// What hydrometers show, against the published density of every row of salt_density.csv and the published formulas: degrees salometer =
/// 100 x per cent / 26.395, degrees Baumé = 145 - 145 / specific gravity, both at 60 F.
/// </summary>
public class BrineHydrometerTests
{
    private const double Within = 0.5, SixtyF = BrineHydrometer.SixtyFahrenheit;

    public static TheoryData<double, double, double?> Rows()
    {
        var rows = new TheoryData<double, double, double?>();
        foreach (IReadOnlyDictionary<string, string> row in Figures.Read("salt_density.csv"))
            rows.Add(Figures.Number(row, "percent_by_mass"), Figures.Number(row, "density_20c_kg_m3"),
                row["density_15c_kg_m3"].Length > 0 ? Figures.Number(row, "density_15c_kg_m3") : null);
        return rows;
    }

    /// <summary>A density hydrometer made for 20 C in brine of 20 C, turned into degrees salometer by the formula.</summary>
    [Theory]
    [MemberData(nameof(Rows))]
    public void SpecificGravity_OfEveryRow_IsThePublishedPerCentWithinHalfADegreeSalometer(double percent, double density, double? _)
    {
        double read = BrineHydrometer.PercentFrom(BrineScale.SpecificGravity, density / 998.2, 20, 20);
        Assert.Equal(100 * percent / BrineHydrometer.SaturatedPercent, 100 * read / BrineHydrometer.SaturatedPercent, Within);
        Assert.Equal(percent, read, 0.03);
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Salometer_AtSixtyFahrenheit_ShowsWhatTheFormulaGives(double percent, double density, double? _)
    {
        Assert.True(density > 1000);
        Assert.Equal(100 * percent / 26.395, BrineHydrometer.ReadingOf(BrineScale.Salometer, percent, SixtyF, SixtyF), 0.001);
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void Baume_OfEveryRow_IsThatOfThePublishedDensityWithinHalfADegree(double percent, double density, double? _) =>
        Assert.Equal(145 - (145 / (density / 998.2)), BrineHydrometer.ReadingOf(BrineScale.Baume, percent, 20, 20), 0.02);

    /// <summary>
    /// The second column of densities is headed 15 C on the page. It disagrees with its own neighbours there (water and the formula of
    /// Laliberté and Cooper 2004) by up to 3.1 kg/m3 and agrees with them at 10 C within 0.5: it is taken as that of 10 C.
    /// </summary>
    [Theory]
    [MemberData(nameof(Rows))]
    public void SpecificGravity_InBrineOfTenDegrees_IsThePublishedPerCentWithinHalfADegreeSalometer(double percent, double density20,
        double? density10)
    {
        if (density10 is not { } density)
            return;
        Assert.True(density > density20);
        // The glass of a scale made for 20 C has shrunk in the cold.
        double shown = density / 998.2 * (1 - (25e-6 * 10));
        double read = BrineHydrometer.PercentFrom(BrineScale.SpecificGravity, shown, 10, 20);
        Assert.Equal(100 * percent / 26.395, 100 * read / 26.395, Within);
    }

    /// <summary>Specific gravity and degrees Baumé that salometer tables print at 60 F (from memory; the last digit is the table's).</summary>
    [Theory]
    [InlineData(10, 1.019, 2.7)]
    [InlineData(20, 1.038, 5.3)]
    [InlineData(40, 1.078, 10.4)]
    [InlineData(60, 1.118, 15.3)]
    [InlineData(80, 1.160, 20.0)]
    [InlineData(100, 1.204, 24.6)]
    public void Salometer_AtSixtyFahrenheit_AgreesWithGravityAndBaumeOfTheTables(double degrees, double gravity, double baume)
    {
        double percent = BrineHydrometer.PercentFrom(BrineScale.Salometer, degrees, SixtyF, SixtyF);
        Assert.Equal(gravity, BrineHydrometer.ReadingOf(BrineScale.SpecificGravity, percent, SixtyF, SixtyF), 0.001);
        Assert.Equal(baume, BrineHydrometer.ReadingOf(BrineScale.Baume, percent, SixtyF, SixtyF), 0.15);
    }
}
