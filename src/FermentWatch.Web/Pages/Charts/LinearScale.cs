namespace FermentWatch.Web.Pages.Charts;

/// <summary>Maps a span of values onto a span of picture units.</summary>
/// <param name="From">Value at <paramref name="AtFrom"/>.</param>
/// <param name="To">Value at <paramref name="AtTo"/>; differs from <paramref name="From"/>.</param>
/// <param name="AtFrom">Where the first value lies in the picture.</param>
/// <param name="AtTo">Where the last value lies in the picture.</param>
public readonly record struct LinearScale(double From, double To, double AtFrom, double AtTo)
{
    /// <summary>Where a value lies; values outside the span are held at its ends.</summary>
    public double At(double value)
    {
        double share = Math.Clamp((value - From) / (To - From), 0, 1);
        return AtFrom + (share * (AtTo - AtFrom));
    }
}
