namespace FermentWatch.Kinetics.Produce;

/// <summary>
/// Lactic acid bacteria on the raw vegetable, log10 CFU per mL of juice and brine, before any growth. Published: 2 to 4 in
/// all on raw cabbage and 4 to 5 on raw napa (common practice, no source); the split between the guilds is set by the
/// calibration.
/// </summary>
/// <param name="StartersLog10">Heterofermentative starters, each of the two kinds.</param>
/// <param name="FinishersLog10">Mesophilic finishers.</param>
/// <param name="ColdFinishersLog10">Cold-tolerant finishers.</param>
public sealed record FirstFlora(double StartersLog10, double FinishersLog10, double ColdFinishersLog10)
{
    /// <summary>Cabbages; also taken for cucumber.</summary>
    public static FirstFlora Cabbage { get; } = new(3.55, 1.9, 1.45);

    /// <summary>Napa and other open leaves.</summary>
    public static FirstFlora Napa { get; } = new(4.7, 2.5, 2.0);

    /// <summary>Roots, which carry soil.</summary>
    public static FirstFlora Root { get; } = new(4.7, 2.5, 2.0);
}
