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
            Console.WriteLine($"{parameter.Name,-60} {parameter.Prior,9:0.####} {parameter.Spread,7:0.###} {parameter.ValueAt(at[i]),9:0.#####} {at[i],9:0.00} {spreadLeft[i],12:0.00}");
        }
    }

    public static void Rows(IReadOnlyList<PublishedCourse> rows, ModelParameters model)
    {
        Console.WriteLine();
        foreach (PublishedCourse row in rows)
        {
            CourseAnswer answer = CourseAnswer.Of(row, [model])[0];
            double ratio = Residuals.LnDayRatio(row, answer) is { } ln ? Math.Exp(ln) : double.NaN;
            Console.WriteLine($"{row.Id,-12} {row.Quantity,-24} {row.Celsius,5:0.0} C day {row.Day,5:0.0} [{row.Low:0.00}, {row.High:0.00}] model {answer.Value:0.00} {(PublishedCourses.IsMet(row, answer.Value, answer.Day) ? "met   " : "MISSED")} day of value {answer.Day:0.0} x{ratio:0.00} {row.Status}");
        }
    }

    public static void LeaveOneStudyOut(IReadOnlyList<PublishedCourse> rows, double[] start)
    {
        var model = new List<double>();
        var rule = new List<double>();
        var modelRecalled = new List<double>();
        var ruleRecalled = new List<double>();
        Console.WriteLine();
        foreach (IGrouping<string, PublishedCourse> study in rows.GroupBy(row => row.Study))
        {
            PublishedCourse[] others = [.. rows.Where(row => row.Study != study.Key)];
            ModelParameters fitted = FreeParameters.ModelAt(new LeastSquares(others).Fit([.. start.Select(_ => 0.0)]));
            var line = OneLineRule.Fit([.. others.Where(row => row.Quantity != "lab_log10_cfu_per_ml")]);
            foreach (PublishedCourse row in study.Where(row => row.Quantity != "lab_log10_cfu_per_ml"))
            {
                CourseAnswer answer = CourseAnswer.Of(row, [fitted])[0];
                double off = Residuals.LnDayRatio(row, answer) ?? Math.Log(4);
                (row.Status == "memory" ? modelRecalled : model).Add(Math.Abs(off));
                (row.Status == "memory" ? ruleRecalled : rule).Add(Math.Abs(line.LnDayRatio(row)));
                Console.WriteLine($"{study.Key,-24} {row.Id,-12} model {answer.Value:0.00} for [{row.Low:0.00}, {row.High:0.00}], day x{Math.Exp(off):0.00}; rule x{Math.Exp(line.LnDayRatio(row)):0.00}");
            }
        }
        Console.WriteLine();
        Summary("rows read or quoted", model, rule);
        Summary("all rows", [.. model, .. modelRecalled], [.. rule, .. ruleRecalled]);
    }

    private static void Summary(string which, List<double> model, List<double> rule) => Console.WriteLine(
        $"left out, {which}: ln of the day, median: model {Median(model):0.000} (x{Math.Exp(Median(model)):0.00}), rule {Median(rule):0.000} (x{Math.Exp(Median(rule)):0.00}), ratio {Median(model) / Median(rule):0.00}; 90th: model x{Math.Exp(At(model, 0.9)):0.00}, rule x{Math.Exp(At(rule, 0.9)):0.00}");

    private static double Median(List<double> values) => At(values, 0.5);

    private static double At(List<double> values, double share)
    {
        double[] sorted = [.. values.Order()];
        double place = share * (sorted.Length - 1);
        int below = (int)place;
        return sorted[below] + ((place - below) * (sorted[Math.Min(below + 1, sorted.Length - 1)] - sorted[below]));
    }
}
