namespace FermentWatch.Web.Pages.Charts;

/// <summary>Round values for an axis: steps of 1, 2 or 5 times a power of ten.</summary>
public static class NiceTicks
{
    /// <summary>The round values within a span, about as many as wanted.</summary>
    /// <param name="low">Low end of the span.</param>
    /// <param name="high">High end, above <paramref name="low"/>.</param>
    /// <param name="wanted">About how many.</param>
    public static IReadOnlyList<double> Within(double low, double high, int wanted)
    {
        double step = Step((high - low) / wanted);
        var ticks = new List<double>();
        for (double tick = Math.Ceiling(low / step) * step; tick <= high + (step * 1e-9); tick += step)
            ticks.Add(Math.Round(tick, 6));
        return ticks;
    }

    private static double Step(double atLeast)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(atLeast)));
        double lead = atLeast / power;
        return power * lead switch { <= 1 => 1, <= 2 => 2, <= 5 => 5, _ => 10 };
    }
}

/// <summary>A labelled place on an axis.</summary>
/// <param name="At">Where it lies, picture units.</param>
/// <param name="Label">What is written beside it.</param>
public sealed record AxisMark(double At, string Label);
