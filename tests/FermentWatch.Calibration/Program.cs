using System.Globalization;
using FermentWatch.Calibration;
using FermentWatch.Calibration.Score;
using FermentWatch.Reference.Tests.Published;

// Refits the model from the published rows and prints everything the fit knows: parameters, residuals, and both again
// with every study left out in turn, beside the one-line rule.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (args.Contains("score"))
{
    ScoreCommand.Run(rows: !args.Contains("--jars"), jars: !args.Contains("--rows"));
    return;
}
IReadOnlyList<PublishedCourse> rows = PublishedCourses.All;
var fit = new LeastSquares(rows);
double[] at = fit.Fit(new double[FreeParameters.All.Count]);
if (args.Contains("--code"))
{
    Console.Write(CodeText.Of(FreeParameters.ModelAt(at)));
    return;
}
if (args.Contains("--table"))
{
    TableText.Print(at, fit.SpreadLeft(at));
    return;
}
Console.WriteLine($"{rows.Count} rows, {FreeParameters.All.Count} parameters, sum of squares {fit.Squares(at):0.00}");
Report.Parameters(at, fit.SpreadLeft(at));
Report.Rows(rows, FreeParameters.ModelAt(at));
Report.Growth(FreeParameters.ModelAt(at), FreeParameters.BrothRateAt(at));
if (!args.Contains("--quick"))
    Report.LeftOut(LeaveOneStudyOut.Run(rows));
