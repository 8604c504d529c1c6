using FermentWatch.Reference.Tests.Published;

namespace FermentWatch.Calibration;

/// <summary>
/// What a person would reckon without a model: so many days at 20 C, and a Q10 for other temperatures, fitted by least squares in
/// the logarithm to the same rows.
/// </summary>
/// <param name="DaysAt20">Days at 20 C.</param>
/// <param name="Q10">Factor for 10 C.</param>
internal sealed record OneLineRule(double DaysAt20, double Q10)
{
    public static OneLineRule Fit(IReadOnlyList<PublishedCourse> rows)
    {
        double n = rows.Count;
        double[] x = [.. rows.Select(row => (20 - row.Celsius) / 10)];
        double[] y = [.. rows.Select(LnDay)];
        double meanX = x.Sum() / n;
        double meanY = y.Sum() / n;
        double slope = x.Zip(y, (a, b) => (a - meanX) * (b - meanY)).Sum() / x.Sum(a => (a - meanX) * (a - meanX));
        return new(Math.Exp(meanY - (slope * meanX)), Math.Exp(slope));
    }

    /// <summary>ln of the rule's day over the row's.</summary>
    public double LnDayRatio(PublishedCourse row) => Math.Log(DaysAt20) + ((20 - row.Celsius) / 10 * Math.Log(Q10)) - LnDay(row);

    private static double LnDay(PublishedCourse row) =>
        Math.Log(row.Quantity == "ripe_day" ? Math.Sqrt(row.Low * row.High) : row.Day);
}
