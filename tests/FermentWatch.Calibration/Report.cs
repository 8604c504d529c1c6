using FermentWatch.Kinetics.Guilds;
using FermentWatch.Reference.Tests.Published;

namespace FermentWatch.Calibration;

/// <summary>Prints what the fit found.</summary>
internal static class Report
{
    public static void Parameters(double[] at, double[] spreadLeft)
    {
        Console.WriteLine();
        Console.WriteLine($"{"parameter",-60} {"prior",9} {"spread",7} {"fitted",9} {"moved by",9} {"spread left",12}");
        for (int i = 0; i < at.Length; i++)
        {
            FreeParameter parameter = FreeParameters.All[i];
            Console.WriteLine($"{parameter.Name,-60} {parameter.Prior,9:0.####} {parameter.Spread,7:0.###} {parameter.ValueAt(at[i]),9:0.#####} "
                + $"{at[i],9:0.00} {spreadLeft[i],12:0.00}");
        }
    }

    public static void Rows(IReadOnlyList<PublishedCourse> rows, ModelParameters model)
    {
        Console.WriteLine();
        foreach (PublishedCourse row in rows)
        {
            CourseAnswer answer = CourseAnswer.Of(row, [model])[0];
            double ratio = Residuals.LnDayRatio(row, answer) is { } ln ? Math.Exp(ln) : double.NaN;
            Console.WriteLine($"{row.Id,-12} {row.Quantity,-24} {row.Celsius,5:0.0} C day {row.Day,5:0.0} [{row.Low:0.00}, {row.High:0.00}] model "
                + $"{answer.Value:0.00} {(PublishedCourses.IsMet(row, answer.Value, answer.Day) ? "met   " : "MISSED")} day of value "
                + $"{answer.Day:0.0} x{ratio:0.00} {row.Status}");
        }
    }

    public static void LeftOut(IReadOnlyList<LeftOutRow> rows)
    {
        Console.WriteLine();
        foreach (LeftOutRow left in rows)
            Console.WriteLine($"{left.Row.Study,-24} {left.Row.Id,-12} model {left.Value:0.00} for [{left.Row.Low:0.00}, {left.Row.High:0.00}], day "
                + $"x{Math.Exp(left.ModelLnDay):0.00}; rule x{Math.Exp(left.RuleLnDay):0.00}");
        Console.WriteLine();
        Summary("rows read or quoted", [.. rows.Where(left => left.Row.Status != "memory")]);
        Summary("all rows", rows);
    }

    private static void Summary(string which, IReadOnlyList<LeftOutRow> rows)
    {
        double model = LeaveOneStudyOut.Median(rows.Select(left => left.ModelLnDay));
        double rule = LeaveOneStudyOut.Median(rows.Select(left => left.RuleLnDay));
        double modelTail = LeaveOneStudyOut.Quantile(rows.Select(left => left.ModelLnDay), 0.9);
        double ruleTail = LeaveOneStudyOut.Quantile(rows.Select(left => left.RuleLnDay), 0.9);
        Console.WriteLine($"left out, {which}: ln of the day, median: model {model:0.000} (x{Math.Exp(model):0.00}), rule {rule:0.000} "
            + $"(x{Math.Exp(rule):0.00}), ratio {model / rule:0.00}; 90th: model x{Math.Exp(modelTail):0.00}, rule x{Math.Exp(ruleTail):0.00}");
    }

    public static void Growth(ModelParameters model, double brothRate)
    {
        Console.WriteLine();
        foreach (GrowthRateRow row in GrowthRateRow.All)
            Console.WriteLine($"growth {row.Celsius,4:0} C pH {row.Ph:0.0} salt {row.SaltPercent:0.0} % lactate {row.LactatePercent:0} %: published "
                + $"{row.RatePerHour:0.0000}, model {brothRate * row.ShareOfOptimum(model):0.0000}");
    }
}
