namespace FermentWatch.Kinetics.Ensemble;

/// <summary>
/// Moves members from the prior to what the observations leave: weights in steps small enough to keep most members,
/// systematic resampling, then Metropolis moves of every member (sequential Monte Carlo with tempering: Del Moral, Doucet and Jasra
/// 2006, J. R. Stat. Soc. B 68:411-436; the moves are Crank-Nicolson steps about the mean and covariance of the other half). A move is judged by a
/// full replay from the day of packing, so no member is a patched one.
/// </summary>
internal sealed class PosteriorSampler(MemberPrior prior, PosteriorSampler.Judge judge, ulong key)
{
    private const int N = Deviate.Count;
    private const double KeptShare = 0.5;
    private const int MostStages = 24;
    private const uint ResamplePurpose = 3;
    private const uint ProposePurpose = 4;
    private const uint AcceptPurpose = 5;

    /// <summary>How far moves reach, of the cloud's own width; the wide ones mix, the narrow ones are taken more often.</summary>
    private static readonly double[] Reaches = [0.9, 0.6, 0.35];

    private readonly CholeskyFactor _firstCloud = new();
    private readonly CholeskyFactor _secondCloud = new();
    private uint _moves;

    /// <summary>Writes the log likelihood of every member of a set of deviates.</summary>
    public delegate void Judge(ReadOnlySpan<double> deviates, Span<double> logLikelihood);

    /// <summary>Accepted share of all moves made.</summary>
    public double AcceptedShare { get; private set; }

    /// <summary>Turns prior members into posterior ones, in place.</summary>
    public void Move(double[] deviates)
    {
        int members = deviates.Length / N;
        double[] logLikelihood = new double[members];
        double[] weights = new double[members];
        judge(deviates, logLikelihood);
        double taken = 0;
        long accepted = 0;
        for (int stage = 0; taken < 1; stage++)
        {
            double step = stage == MostStages ? 1 - taken : StepOf(logLikelihood, 1 - taken, weights);
            Weigh(logLikelihood, step, weights);
            taken += step;
            Resample(deviates, logLikelihood, weights, (uint)stage);
            bool last = taken >= 1;
            for (int round = 0; round < (last ? 4 : 1); round++)
            {
                // Each half moves about the other half's cloud: a cloud that held the member itself would draw it in.
                int middle = members / 2 * N;
                _firstCloud.Take(deviates.AsSpan(0, middle));
                _secondCloud.Take(deviates.AsSpan(middle));
                foreach (double reach in Reaches)
                    accepted += MoveAll(deviates, logLikelihood, taken, reach);
            }
        }
        AcceptedShare = (double)accepted / (_moves * (long)members);
    }

    /// <summary>The longest step of the temper that keeps half of the members effective.</summary>
    private static double StepOf(double[] logLikelihood, double most, double[] weights)
    {
        if (EffectiveShare(logLikelihood, most, weights) >= KeptShare)
            return most;
        double low = 0;
        double high = most;
        for (int i = 0; i < 40; i++)
        {
            double middle = 0.5 * (low + high);
            if (EffectiveShare(logLikelihood, middle, weights) >= KeptShare)
                low = middle;
            else
                high = middle;
        }
        return Math.Max(low, 1e-6);
    }

    private static double EffectiveShare(double[] logLikelihood, double step, double[] weights)
    {
        Weigh(logLikelihood, step, weights);
        double squares = 0;
        foreach (double weight in weights)
            squares += weight * weight;
        return 1 / squares / weights.Length;
    }

    private static void Weigh(double[] logLikelihood, double step, double[] weights)
    {
        double most = logLikelihood.Max();
        double sum = 0;
        for (int m = 0; m < weights.Length; m++)
            sum += weights[m] = Math.Exp(step * (logLikelihood[m] - most));
        for (int m = 0; m < weights.Length; m++)
            weights[m] /= sum;
    }

    /// <summary>Systematic resampling (Kitagawa 1996, J. Comput. Graph. Stat. 5:1-25).</summary>
    private void Resample(double[] deviates, double[] logLikelihood, double[] weights, uint stage)
    {
        int members = weights.Length;
        double[] before = [.. deviates];
        double[] likelihoodBefore = [.. logLikelihood];
        double start = Philox.Uniform(key, ResamplePurpose, stage, 0);
        double reached = weights[0];
        int source = 0;
        for (int m = 0; m < members; m++)
        {
            double wanted = (m + start) / members;
            while (reached < wanted && source < members - 1)
                reached += weights[++source];
            before.AsSpan(source * N, N).CopyTo(deviates.AsSpan(m * N, N));
            logLikelihood[m] = likelihoodBefore[source];
        }
    }

    private int MoveAll(double[] deviates, double[] logLikelihood, double temper, double reach)
    {
        int members = logLikelihood.Length;
        double[] proposed = new double[deviates.Length];
        double[] proposedLikelihood = new double[members];
        for (int m = 0; m < members; m++)
            Propose(CloudFor(m, members), deviates.AsSpan(m * N, N), proposed.AsSpan(m * N, N), (uint)m, reach);
        judge(proposed, proposedLikelihood);
        int accepted = 0;
        for (int m = 0; m < members; m++)
        {
            Span<double> old = deviates.AsSpan(m * N, N);
            Span<double> young = proposed.AsSpan(m * N, N);
            double gain = (temper * (proposedLikelihood[m] - logLikelihood[m])) + prior.LogDensity(young) - prior.LogDensity(old)
                + (0.5 * (CloudFor(m, members).SquaredDistance(young) - CloudFor(m, members).SquaredDistance(old)));
            if (!(Math.Log(Philox.Uniform(key, AcceptPurpose, (uint)m, _moves)) < gain))
                continue;
            young.CopyTo(old);
            logLikelihood[m] = proposedLikelihood[m];
            accepted++;
        }
        _moves++;
        return accepted;
    }

    private CholeskyFactor CloudFor(int member, int members) => member < members / 2 ? _secondCloud : _firstCloud;

    private void Propose(CholeskyFactor cloud, ReadOnlySpan<double> old, Span<double> proposed, uint member, double reach)
    {
        Span<double> noise = stackalloc double[N];
        Span<double> step = stackalloc double[N];
        for (uint d = 0; d < N; d++)
            noise[(int)d] = Philox.Normal(key, ProposePurpose, member, (_moves * N) + d);
        cloud.Multiply(noise, step);
        double kept = Math.Sqrt(1 - (reach * reach));
        for (int d = 0; d < N; d++)
            proposed[d] = cloud.Mean[d] + (kept * (old[d] - cloud.Mean[d])) + (reach * step[d]);
    }
}
