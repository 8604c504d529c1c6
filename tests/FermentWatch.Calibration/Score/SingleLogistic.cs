using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Reference.Tests.Published;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;

namespace FermentWatch.Calibration.Score;

/// <summary>
/// What forecasts are measured against: one logistic curve from a raw to a finished value, the same for every vegetable,
/// stretched by Q10, fitted by least squares to the rows; its interval is as wide as the rows lie about it.
/// </summary>
internal sealed class SingleLogistic
{
    private const double Z90 = 1.2815516;

    private readonly Vector<double> _at;
    private readonly double _phDeviation;
    private readonly double _acidityDeviation;

    private SingleLogistic(Vector<double> at, IReadOnlyList<PublishedCourse> rows)
    {
        _at = at;
        _phDeviation = Deviation(at, rows.Where(row => row.Quantity == "ph"));
        _acidityDeviation = Deviation(at, rows.Where(row => row.Quantity != "ph"));
    }

    /// <summary>Factor for 10 C.</summary>
    public double Q10 => Math.Exp(_at[1]);

    public static SingleLogistic Fit(IReadOnlyList<PublishedCourse> rows)
    {
        // ln of the half time at 20 C, ln Q10, ln of the slope a day, raw and finished acidity, raw and finished pH.
        Vector<double> start = Vector<double>.Build.DenseOfArray([Math.Log(3), Math.Log(3), 0, 0.2, 1.5, 6, 3.7]);
        IObjectiveFunction squares = ObjectiveFunction.Value(at => rows.Sum(row => Math.Pow(Value(at, row) - row.Middle, 2))
            + Math.Pow((at[1] - Math.Log(3)) / 3, 2) + Math.Pow((at[3] - 0.2) / 0.2, 2) + Math.Pow((at[5] - 6) / 0.3, 2));
        for (int round = 0; round < 3; round++)
            start = new NelderMeadSimplex(1e-9, 20_000).FindMinimum(squares, start).MinimizingPoint;
        return new(start, rows);
    }

    public Quantiles Of(PublishedCourse row)
    {
        double middle = Value(_at, row);
        double half = Z90 * (row.Quantity == "ph" ? _phDeviation : _acidityDeviation);
        return new(middle - half, middle, middle + half);
    }

    private static double Value(Vector<double> at, PublishedCourse row)
    {
        double stretched = row.Day * Math.Exp(at[1] * (row.Celsius - 20) / 10);
        double share = 1 / (1 + Math.Exp(-Math.Exp(at[2]) * (stretched - Math.Exp(at[0]))));
        (double raw, double finished) = row.Quantity == "ph" ? (at[5], at[6]) : (at[3], at[4]);
        return raw + ((finished - raw) * share);
    }

    private static double Deviation(Vector<double> at, IEnumerable<PublishedCourse> rows) =>
        Math.Sqrt(rows.Average(row => Math.Pow(Value(at, row) - row.Middle, 2)));
}
