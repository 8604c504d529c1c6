using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Simulation;
using FermentWatch.Reference.Tests.Published;

namespace FermentWatch.Calibration;

/// <summary>
/// How long the brine takes from one pH to another. Published jars take 1.3 to 2.8 days from 5.6 to 4.6 (design, model.md, fourth trial:
/// read off by others, the jars are not named, so the figure is no row of ours and held loosely), and at 20 C it is below 4.6 on day 3 and
/// at 3.9 within a week: common practice, no source. Without that the fit rests on a shelf near 4.1, which only napa has.
/// </summary>
internal sealed record Fall(string Vegetable, string Cut, double SaltPercent, double Celsius, double FromPh, double ToPh, double PublishedDays,
    double LnError)
{
    private const double Span = 40;

    /// <summary>The falls the fit is held to.</summary>
    public static IReadOnlyList<Fall> All { get; } =
    [
        new("cabbage", "shredded", 2.25, 18, 5.6, 4.6, 1.7, 0.3),
        new("cabbage", "shredded", 2.25, 18, 4.6, 3.9, 3.2, 0.2),
    ];

    /// <summary>Days of the fall under many parameter sets.</summary>
    public double[] Days(IReadOnlyList<ModelParameters> models)
    {
        var from = new Passage(Watched.BrinePh, FromPh, models.Count);
        var to = new Passage(Watched.BrinePh, ToPh, models.Count);
        Median.Run(PublishedJar, models, Celsius, Span, [from, to]);
        return [.. to.Days.Zip(from.Days, (late, early) => double.IsNaN(late) || double.IsNaN(early) ? Span : late - early)];
    }

    /// <summary>Residual of a fall.</summary>
    public double Residual(double days) => Math.Log(days / PublishedDays) / LnError;

    private JarContents PublishedJar(ModelParameters model) => PublishedCourses.Jar(model, Vegetable, Cut, SaltPercent);
}
