using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Simulation;
using FermentWatch.Reference.Tests.Published;

namespace FermentWatch.Calibration;

/// <summary>
/// How much longer napa takes to 0.65 % at 5 C with 3.5 % of salt than with 1.5 %: 2.3 times (told by those who set the task of
/// published kimchi; the source is not named, so it is held loosely).
/// </summary>
internal static class SaltInTheCold
{
    private const double PublishedRatio = 2.3;
    private const double LnError = 0.3;
    private const double Percent = 0.65;
    private const double Span = 60;

    /// <summary>The ratio under many parameter sets.</summary>
    public static double[] Ratios(IReadOnlyList<ModelParameters> models) =>
        [.. Days(models, 3.5).Zip(Days(models, 1.5), (much, little) => much / little)];

    /// <summary>Residual of a ratio.</summary>
    public static double Residual(double ratio) => Math.Log(ratio / PublishedRatio) / LnError;

    private static IEnumerable<double> Days(IReadOnlyList<ModelParameters> models, double saltPercent)
    {
        var ripe = new Passage(Watched.Acidity, Percent, models.Count);
        Median.Run(model => PublishedCourses.Jar(model, "napa", "salted leaves", saltPercent), models, 5, Span, [ripe]);
        return ripe.Days.Select(day => double.IsNaN(day) ? Span : day);
    }
}
