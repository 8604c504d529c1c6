using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Household;
using FermentWatch.Kinetics.Simulation;

namespace FermentWatch.Kinetics.Ensemble;

/// <summary>
/// What tastes are measured on: the level the household chose, as a sourness index or as the titratable acidity that stands
/// beside the words. Sour taste goes with the index (Da Conceicao Neta et al. 2007), which climbs faster than the acidity: from
/// about 22 mmol/L at 0.7 % and pH 4.2 to about 100 at 1.5 % and pH 3.6 (computed, not published).
/// </summary>
internal sealed class TasteScale
{
    private static readonly double LnIndexPerLnAcidity = Math.Log(100.0 / 22.0) / Math.Log(1.5 / 0.7);

    private readonly double _level;
    private readonly double _lnTastePerLn;

    /// <param name="target">A sourness or an acidity; null or a pH leaves a scale nobody tastes on.</param>
    public TasteScale(ForecastTarget? target)
    {
        Watched = target is { Kind: TargetKind.Sourness } ? Watched.Sourness : Watched.Acidity;
        _level = target is { Kind: not TargetKind.Ph } ? target.Level : 1;
        _lnTastePerLn = Watched == Watched.Sourness ? 1 : LnIndexPerLnAcidity;
    }

    /// <summary>What the level is a level of.</summary>
    public Watched Watched { get; }

    /// <summary>ln of the sourness of a value over the level as chosen.</summary>
    public double LnOver(double value) => _lnTastePerLn * Math.Log(Math.Max(value, 1e-3) / _level);

    /// <summary>The level of a member whose household likes it this far from the words.</summary>
    public double LevelOf(double tasteDeviate) => _level * Math.Exp(HouseholdPrior.TotalTaste * tasteDeviate / _lnTastePerLn);
}
