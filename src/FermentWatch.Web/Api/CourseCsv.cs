using System.Globalization;
using System.Text;
using FermentWatch.Web.Api.Answers;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Web.Api;

/// <summary>A jar's course as CSV, a line for each thing in its picture, by time.</summary>
internal static class CourseCsv
{
    public static string Of(CourseAnswer course)
    {
        var lines = new List<(DateTime At, string Line)>();
        for (int i = 0; i < course.Expected.At.Count; i++)
        {
            ExpectedAnswer expected = course.Expected;
            lines.Add((expected.At[i], Line("expected", "ph", expected.PhP50[i], expected.PhP10[i], expected.PhP90[i], "")));
            lines.Add((expected.At[i], Line("expected", "celsius", null, expected.LowCelsius[i], expected.HighCelsius[i], "")));
        }
        MeasuredColumns measured = course.Temperature;
        for (int i = 0; i < measured.At.Count; i++)
            lines.Add((measured.At[i], Line("measured", "celsius", measured.MeanCelsius[i],
                measured.MinimumCelsius[i], measured.MaximumCelsius[i], "")));
        lines.AddRange(course.Entries.Select(entry => (entry.At.ToDateTimeUtc(),
            Line(entry.Ph is null ? "entered" : "measured", entry.Ph is null ? "" : "ph", entry.Ph, null, null, entry.Words))));
        var text = new StringBuilder("at,what,unit,value,low,high,words\n");
        foreach ((DateTime at, string line) in lines.OrderBy(line => line.At))
            text.Append(InstantPattern.ExtendedIso.Format(Instant.FromDateTimeUtc(at))).Append(',').Append(line).Append('\n');
        return text.ToString();
    }

    private static string Line(string what, string unit, double? value, double? low, double? high, string words) =>
        string.Create(CultureInfo.InvariantCulture,
            $"{what},{unit},{value},{low},{high},\"{words.Replace("\"", "\"\"", StringComparison.Ordinal)}\"");
}
