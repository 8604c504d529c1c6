using System.Globalization;
using FermentWatch.Kinetics.Forecasting;

namespace FermentWatch.Service.CommandLine.Outlook;

/// <summary>Small charts of letters: the median as <c>o</c>, its 80 % interval as dots, the acid line dashed.</summary>
internal static class CourseChart
{
    private const int Rows = 9;
    private const int MarginColumns = 8;
    private const double AcidLinePh = 4.6;

    /// <summary>Charts of pH and of acidity over the days.</summary>
    public static IEnumerable<string> Lines(Forecast forecast, int width)
    {
        int columns = Math.Clamp(width - MarginColumns - 2, 20, 72);
        return Chart("pH", forecast.Course, point => point.Ph, AcidLinePh, columns)
            .Concat(Chart("acid, % lactic", forecast.Course, point => point.AcidityPercentLactic, null, columns));
    }

    private static IEnumerable<string> Chart(
        string title, IReadOnlyList<CoursePoint> course, Func<CoursePoint, Quantiles> of, double? line, int columns)
    {
        double low = course.Min(point => of(point).P10);
        double high = course.Max(point => of(point).P90);
        double days = Math.Max(course[^1].Day, double.Epsilon);
        int Row(double value) => (int)Math.Round((high - value) / Math.Max(high - low, 1e-9) * (Rows - 1));

        yield return $"{title} (o half of the jars, . eight of ten{(line is null ? "" : ", - acid line")})";
        char[][] grid = [.. Enumerable.Range(0, Rows).Select(_ => new string(' ', columns).ToCharArray())];
        if (line is { } level && level >= low && level <= high)
            Array.Fill(grid[Row(level)], '-');
        for (int column = 0; column < columns; column++)
        {
            Quantiles at = of(Nearest(course, days * column / (columns - 1)));
            for (int row = Row(at.P90); row <= Row(at.P10); row++)
                grid[row][column] = '.';
            grid[Row(at.P50)][column] = 'o';
        }
        for (int row = 0; row < Rows; row++)
        {
            double label = high - ((high - low) * row / (Rows - 1));
            yield return string.Create(CultureInfo.InvariantCulture, $"{label,6:0.00} |{new string(grid[row])}").TrimEnd();
        }
        string end = $"day {Digits.Day(course[^1].Day)}";
        yield return $"{"day 0",MarginColumns + 4}{end.PadLeft(columns - 5)}";
    }

    private static CoursePoint Nearest(IReadOnlyList<CoursePoint> course, double day) => course.MinBy(point => Math.Abs(point.Day - day))!;
}
