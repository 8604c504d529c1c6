using FermentWatch.Kinetics.Guilds;
using FermentWatch.Reference.Tests.Published;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace FermentWatch.Calibration;

/// <summary>
/// Least squares over rows and priors by the Levenberg-Marquardt method (Marquardt 1963, J. SIAM 11:431-441). Parameters are
/// in prior standard deviations, so that a prior is one residual each; the columns of the Jacobian are run side by side in lanes.
/// </summary>
internal sealed class LeastSquares(IReadOnlyList<PublishedCourse> rows)
{
    /// <summary>Falls, and the salt in the cold.</summary>
    private static readonly int Effects = Fall.All.Count + 1;

    private const double Step = 0.02;
    private const int MostRounds = 60;

    private readonly int _count = FreeParameters.All.Count;

    /// <summary>Fits from a start; returns deviates from the prior means.</summary>
    public double[] Fit(double[] start)
    {
        double[] at = [.. start];
        (Vector<double> residuals, Matrix<double> jacobian) = Linearize(at);
        double damping = 1;
        for (int round = 0; round < MostRounds; round++)
        {
            Matrix<double> normal = jacobian.TransposeThisAndMultiply(jacobian);
            Vector<double> gradient = jacobian.TransposeThisAndMultiply(residuals);
            Vector<double> move = (normal + (damping * Matrix<double>.Build.DiagonalIdentity(_count))).Cholesky().Solve(-gradient);
            double[] next = [.. at.Select((value, i) => Math.Clamp(value + move[i], -4, 4))];
            double better = ResidualsAt([next])[0].L2Norm();
            double before = residuals.L2Norm();
            if (better >= before)
            {
                damping *= 4;
                if (damping > 1e6)
                    break;
                continue;
            }
            at = next;
            (residuals, jacobian) = Linearize(at);
            damping = Math.Max(damping / 3, 1e-4);
            if (before - better < 1e-5 * before)
                break;
        }
        return at;
    }

    /// <summary>Share of a parameter's spread that is left after the rows have spoken: 1 means the rows say nothing of it.</summary>
    public double[] SpreadLeft(double[] at)
    {
        (_, Matrix<double> jacobian) = Linearize(at);
        Cholesky<double> normal = jacobian.TransposeThisAndMultiply(jacobian).Cholesky();
        Matrix<double> covariance = normal.Solve(Matrix<double>.Build.DenseIdentity(_count));
        return [.. Enumerable.Range(0, _count).Select(i => Math.Sqrt(covariance[i, i]))];
    }

    /// <summary>Sum of squares, rows and priors together.</summary>
    public double Squares(double[] at) => ResidualsAt([at])[0].DotProduct(ResidualsAt([at])[0]);

    private (Vector<double> Residuals, Matrix<double> Jacobian) Linearize(double[] at)
    {
        var points = new List<double[]> { at };
        for (int i = 0; i < _count; i++)
        {
            double[] shifted = [.. at];
            shifted[i] += Step;
            points.Add(shifted);
        }
        Vector<double>[] residuals = ResidualsAt(points);
        Matrix<double> jacobian = Matrix<double>.Build.DenseOfColumnVectors(residuals.Skip(1).Select(column => (column - residuals[0]) / Step));
        return (residuals[0], jacobian);
    }

    private Vector<double>[] ResidualsAt(List<double[]> points)
    {
        ModelParameters[] models = [.. points.Select(point => FreeParameters.ModelAt(point))];
        double[][] residuals = [.. points.Select(_ => new double[(rows.Count * Residuals.PerRow) + GrowthRateRow.All.Count + Effects + _count])];
        for (int r = 0; r < rows.Count; r++)
        {
            CourseAnswer[] answers = CourseAnswer.Of(rows[r], models);
            for (int p = 0; p < points.Count; p++)
                Residuals.Of(rows[r], answers[p], residuals[p].AsSpan(r * Residuals.PerRow, Residuals.PerRow));
        }
        for (int p = 0; p < points.Count; p++)
        {
            int growth = rows.Count * Residuals.PerRow;
            double broth = FreeParameters.BrothRateAt(points[p]);
            for (int g = 0; g < GrowthRateRow.All.Count; g++)
                residuals[p][growth + g] = Residuals.Of(GrowthRateRow.All[g], models[p], broth);
            points[p].CopyTo(residuals[p], growth + GrowthRateRow.All.Count + Effects);
        }
        for (int e = 0; e < Effects; e++)
        {
            double[] effect = e < Fall.All.Count
                ? [.. Fall.All[e].Days(models).Select(Fall.All[e].Residual)]
                : [.. SaltInTheCold.Ratios(models).Select(SaltInTheCold.Residual)];
            for (int p = 0; p < points.Count; p++)
                residuals[p][(rows.Count * Residuals.PerRow) + GrowthRateRow.All.Count + e] = effect[p];
        }
        return [.. residuals.Select(each => Vector<double>.Build.Dense(each))];
    }
}
