namespace FermentWatch.Kinetics.Ensemble;

/// <summary>Mean and Cholesky factor of the members' deviates: the cloud that proposals are drawn from.</summary>
internal sealed class CholeskyFactor
{
    private const int N = Deviate.Count;

    private readonly double[] _factor = new double[N * N];

    public double[] Mean { get; } = new double[N];

    /// <summary>Takes the cloud's mean and covariance, a little widened so that a cloud of few distinct members has one too.</summary>
    public void Take(ReadOnlySpan<double> deviates)
    {
        int members = deviates.Length / N;
        Array.Clear(Mean);
        for (int m = 0; m < members; m++)
        {
            for (int d = 0; d < N; d++)
                Mean[d] += deviates[(m * N) + d] / members;
        }
        for (int i = 0; i < N; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = 0;
                for (int m = 0; m < members; m++)
                    sum += (deviates[(m * N) + i] - Mean[i]) * (deviates[(m * N) + j] - Mean[j]);
                _factor[(i * N) + j] = (1.05 * sum / members) + (i == j ? 0.01 : 0);
            }
        }
        Decompose();
    }

    /// <summary>target = factor x source.</summary>
    public void Multiply(ReadOnlySpan<double> source, Span<double> target)
    {
        for (int i = 0; i < N; i++)
        {
            double sum = 0;
            for (int j = 0; j <= i; j++)
                sum += _factor[(i * N) + j] * source[j];
            target[i] = sum;
        }
    }

    /// <summary>Squared length of (deviates - mean) in units of the cloud.</summary>
    public double SquaredDistance(ReadOnlySpan<double> deviates)
    {
        Span<double> solved = stackalloc double[N];
        double squares = 0;
        for (int i = 0; i < N; i++)
        {
            double sum = deviates[i] - Mean[i];
            for (int j = 0; j < i; j++)
                sum -= _factor[(i * N) + j] * solved[j];
            solved[i] = sum / _factor[(i * N) + i];
            squares += solved[i] * solved[i];
        }
        return squares;
    }

    private void Decompose()
    {
        for (int i = 0; i < N; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double sum = _factor[(i * N) + j];
                for (int k = 0; k < j; k++)
                    sum -= _factor[(i * N) + k] * _factor[(j * N) + k];
                _factor[(i * N) + j] = i == j ? Math.Sqrt(Math.Max(sum, 1e-6)) : sum / _factor[(j * N) + j];
            }
        }
    }
}
