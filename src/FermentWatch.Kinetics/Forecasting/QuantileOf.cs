namespace FermentWatch.Kinetics.Forecasting;

/// <summary>Quantiles of members' values: linear between order statistics (Hyndman and Fan 1996, type 7).</summary>
internal static class QuantileOf
{
    public static Quantiles Values(ReadOnlySpan<double> values, double[] scratch)
    {
        Span<double> sorted = Sorted(values, scratch, double.NaN);
        return new(At(sorted, 0.1), At(sorted, 0.5), At(sorted, 0.9));
    }

    /// <summary>Days, NaN where never: such members sort last, and a quantile that would need one is null.</summary>
    public static PassageDays Days(ReadOnlySpan<double> days, double[] scratch)
    {
        Span<double> sorted = Sorted(days, scratch, double.PositiveInfinity);
        return new(Reached(At(sorted, 0.1)), Reached(At(sorted, 0.5)), Reached(At(sorted, 0.9)));
    }

    private static Span<double> Sorted(ReadOnlySpan<double> values, double[] scratch, double missing)
    {
        Span<double> sorted = scratch.AsSpan(0, values.Length);
        for (int i = 0; i < values.Length; i++)
            sorted[i] = double.IsNaN(values[i]) ? missing : values[i];
        sorted.Sort();
        return sorted;
    }

    private static double At(ReadOnlySpan<double> sorted, double share)
    {
        double place = share * (sorted.Length - 1);
        int below = (int)place;
        int above = Math.Min(below + 1, sorted.Length - 1);
        double part = place - below;
        return part == 0 ? sorted[below] : sorted[below] + (part * (sorted[above] - sorted[below]));
    }

    private static double? Reached(double day) => double.IsFinite(day) ? day : null;
}
