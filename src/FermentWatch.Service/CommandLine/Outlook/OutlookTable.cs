using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Guides;
using NodaTime;
using NodaTime.Text;
using Spectre.Console;

namespace FermentWatch.Service.CommandLine.Outlook;

/// <summary>The answer for people: charts on a terminal, the course, the days in words, and what a forecast is not.</summary>
internal static class OutlookTable
{
    private static readonly Caution[] Shown = [Cautions.ForecastIsNoMeasurement, Cautions.LocalGuidanceFirst];

    public static void Write(OutlookAnswer answer, CommandContext context)
    {
        Forecast forecast = answer.Forecast;
        if (context.IsTerminal)
            foreach (string line in CourseChart.Lines(forecast, context.Width))
                context.Output.WriteLine(line);
        Consoles.Write(Course(forecast), context);
        WriteDays(context.Output, "acid line, pH 4.6", forecast.AcidLine, answer.SpanDays);
        WriteDays(context.Output, "acid line in the middle of the largest piece", forecast.CentreAcidLine, answer.SpanDays);
        foreach ((string name, PassageDays days) in answer.Until)
            WriteDays(context.Output, name, days, answer.SpanDays);
        if (answer.Target is { } target)
            WriteDays(context.Output, target.Name, target.Days, answer.SpanDays);
        if (answer.Ready is { } ready)
            context.Output.WriteLine(
                $"To be ready on {Date(ready.Date)}: pack by {Date(ready.NineOfTen)} for nine of ten, by {Date(ready.Half)} for half.");
        WriteNotes(forecast, context.Output);
        foreach (Caution caution in Shown)
            context.Output.WriteLine($"Caution: {caution.Text}");
    }

    /// <summary>Heat, remarks and flagged readings, a line each.</summary>
    public static void WriteNotes(Forecast forecast, TextWriter writer)
    {
        if (forecast.Course.Any(point => point.JarCelsius >= HeatAhead.Celsius))
            writer.WriteLine($"Note: at {HeatAhead.Celsius:0} C or more in the jar. {HeatAhead.Advice}");
        foreach (string remark in forecast.Remarks)
            writer.WriteLine($"Note: {remark}.");
        foreach (FlaggedReading flagged in forecast.Flagged)
            writer.WriteLine($"Look again: {flagged.Reason}.");
    }

    private static Table Course(Forecast forecast)
    {
        var table = new Table().Border(TableBorder.Simple)
            .AddColumns("day", "jar C", "pH", "eight of ten", "acid %", "eight of ten", "sourness");
        foreach (TableColumn column in table.Columns)
            column.RightAligned().NoWrap();
        foreach (CoursePoint point in forecast.Course)
            table.AddRow(Digits.Day(point.Day), Digits.Tenths(point.JarCelsius),
                Digits.Hundredths(point.Ph.P50), Range(point.Ph),
                Digits.Hundredths(point.AcidityPercentLactic.P50), Range(point.AcidityPercentLactic), Digits.Whole(point.SournessP50));
        return table;
    }

    private static string Date(LocalDate? date) => date is { } known ? LocalDatePattern.Iso.Format(known) : "an earlier date than these days reach";

    private static string Range(Quantiles of) => $"{Digits.Hundredths(of.P10)} to {Digits.Hundredths(of.P90)}";

    /// <summary>The late end first: it is the one to plan with.</summary>
    private static void WriteDays(TextWriter writer, string what, PassageDays days, double span)
    {
        string late = days.P90 is { } p90 ? $"by day {Digits.Tenths(p90)} in nine of ten"
            : $"in fewer than nine of ten within {Digits.Day(span)} days";
        string middle = days.P50 is { } p50 ? $"about day {Digits.Tenths(p50)}" : $"in fewer than half within {Digits.Day(span)} days";
        string early = days.P10 is { } p10 ? $"at the earliest day {Digits.Tenths(p10)}" : $"hardly at all within {Digits.Day(span)} days";
        writer.WriteLine($"Expected, {what}: {late}, {middle}, {early}.");
    }
}
