using FermentWatch.Kinetics.Guilds;
using FermentWatch.Reference.Tests.Published;

namespace FermentWatch.Calibration;

/// <summary>
/// Every study predicted by a model that never saw it, and by the one-line rule fitted to the same other rows. A row's
/// error is the logarithm of the day at which its value is reached over the day published.
/// </summary>
internal static class LeaveOneStudyOut
{
    /// <summary>Not reached within four times the row's day counts as at its end.</summary>
    private static readonly double NotReached = Math.Log(4);

    /// <summary>All rows with a day that means something, study by study.</summary>
    public static IReadOnlyList<LeftOutRow> Run(IReadOnlyList<PublishedCourse> rows)
    {
        string[] studies = [.. rows.Select(row => row.Study).Distinct()];
        var left = new IReadOnlyList<LeftOutRow>[studies.Length];
        Parallel.For(0, studies.Length, i => left[i] = Predict(rows, studies[i]));
        return [.. left.SelectMany(each => each)];
    }

    /// <summary>The middle one of the absolute errors.</summary>
    public static double Median(IEnumerable<double> errors) => Quantile(errors, 0.5);

    /// <summary>A quantile of the absolute errors, linear between order statistics.</summary>
    public static double Quantile(IEnumerable<double> errors, double share)
    {
        double[] sorted = [.. errors.Select(Math.Abs).Order()];
        double place = share * (sorted.Length - 1);
        int below = (int)place;
        return sorted[below] + ((place - below) * (sorted[Math.Min(below + 1, sorted.Length - 1)] - sorted[below]));
    }

    private static LeftOutRow[] Predict(IReadOnlyList<PublishedCourse> rows, string study)
    {
        PublishedCourse[] others = [.. rows.Where(row => row.Study != study)];
        ModelParameters fitted = FreeParameters.ModelAt(new LeastSquares(others).Fit(new double[FreeParameters.All.Count]));
        OneLineRule rule = OneLineRule.Fit([.. others.Where(HasDay)]);
        return
        [
            .. rows.Where(row => row.Study == study && HasDay(row)).Select(row =>
            {
                CourseAnswer answer = CourseAnswer.Of(row, [fitted])[0];
                return new LeftOutRow(row, answer.Value, Residuals.LnDayRatio(row, answer) ?? NotReached, rule.LnDayRatio(row));
            }),
        ];
    }

    private static bool HasDay(PublishedCourse row) => row.Quantity != "lab_log10_cfu_per_ml";
}
