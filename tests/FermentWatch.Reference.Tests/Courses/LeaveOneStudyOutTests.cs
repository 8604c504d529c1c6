using FermentWatch.Calibration;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Reference.Tests.Published;

namespace FermentWatch.Reference.Tests.Courses;

/// <summary>The model on studies it never saw, and what a constant would have made of the same rows.</summary>
public class LeaveOneStudyOutTests
{
    private static readonly PublishedCourse[] Trusted = [.. PublishedCourses.All.Where(row => row.Status is "read" or "secondary")];

    /// <summary>
    /// The median's error of the day is below the one-line rule's: 0.91 of it over the rows read or quoted, 0.77 over all. It was under
    /// half while a cliff that no published jar shows put every plateau in its place; a day on a plateau means little, and the score of
    /// the value on the published day (Calibration/Score) is as good. PARAMETERS.md tells what was given for what.
    /// </summary>
    [Fact]
    public void Run_StudiesLeftOut_ErrsLessThanTheRule()
    {
        IReadOnlyList<LeftOutRow> rows = LeaveOneStudyOut.Run(PublishedCourses.All);
        LeftOutRow[] trusted = [.. rows.Where(left => left.Row.Status != "memory")];
        Assert.InRange(Median(trusted, left => left.ModelLnDay), 0, 0.93 * Median(trusted, left => left.RuleLnDay));
        Assert.InRange(Median(rows, left => left.ModelLnDay), 0, 0.8 * Median(rows, left => left.RuleLnDay));
    }

    /// <summary>The best constant day, fitted to all rows at once, does not come near.</summary>
    [Fact]
    public void ConstantDay_BestOfAll_ErrsMoreThanHalfOfTheRule()
    {
        var rule = OneLineRule.Fit(Trusted.Where(HasDay).ToArray());
        double constant = Enumerable.Range(1, 400)
            .Min(i => LeaveOneStudyOut.Median(Trusted.Where(HasDay).Select(row => Math.Log(0.1 * i / row.Day))));
        double ruled = LeaveOneStudyOut.Median(Trusted.Where(HasDay).Select(rule.LnDayRatio));
        Assert.True(constant > 0.5 * ruled, $"{constant:0.00} against {ruled:0.00}");
    }

    /// <summary>No constant acidity and pH meet the rows: the best of them misses far more than five.</summary>
    [Fact]
    public void ConstantValues_BestOfAll_MissFarMoreThanFiveRows()
    {
        int acidities = Best(Trusted.Where(row => row.Quantity == "acidity_percent_lactic"), 0.02);
        int phs = Best(Trusted.Where(row => row.Quantity == "ph"), 0.05);
        Assert.True(acidities + phs > 10, $"{acidities} and {phs} missed");
    }

    /// <summary>Nor does the start of the calibration: the rows tell a fitted model from one that is not.</summary>
    [Fact]
    public void EarlierTrial_Unfitted_MissesMoreThanFiveRows()
    {
        int missed = Trusted.Count(row =>
        {
            CourseAnswer answer = CourseAnswer.Of(row, [EarlierTrial.Model])[0];
            return !PublishedCourses.IsMet(row, answer.Value, answer.Day);
        });
        Assert.True(missed > 5, $"{missed} missed");
    }

    /// <summary>The values in the product are what the calibration prints, to the last digit.</summary>
    [Fact]
    public void Fit_FromThePriors_GivesTheValuesInUse()
    {
        double[] at = new LeastSquares(PublishedCourses.All).Fit(new double[FreeParameters.All.Count]);
        Assert.Equal(CodeText.Of(ModelParameters.Current), CodeText.Of(FreeParameters.ModelAt(at)));
    }

    private static int Best(IEnumerable<PublishedCourse> rows, double step) =>
        Enumerable.Range(1, 400).Min(i => rows.Count(row => !PublishedCourses.IsMet(row, i * step, null)));

    private static bool HasDay(PublishedCourse row) => row.Quantity != "lab_log10_cfu_per_ml";

    private static double Median(IEnumerable<LeftOutRow> rows, Func<LeftOutRow, double> error) => LeaveOneStudyOut.Median(rows.Select(error));
}
