using System.Globalization;
using System.Text;
using FermentWatch.Acts.Histories;
using FermentWatch.Acts.Jars;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Web.Api.Answers;
using NodaTime.Text;
using static FermentWatch.Web.Api.Answers.MeasuredAnswer;

namespace FermentWatch.Web.Api;

/// <summary>What was measured over any span, as JSON or CSV.</summary>
internal static class HistoryEndpoints
{
    private const string Csv = "text/csv";

    public static void MapHistory(this RouteGroupBuilder api)
    {
        api.MapGet("/history", AskAsync).WithTags("history")
            .WithSummary("What was measured in a place, by a sensor or of a jar, in at most so many points. Few readings come one by one.")
            .WithDescription("Name one of place, sensor or jar. CSV comes by 'Accept: text/csv' or by 'format=csv'.")
            .Produces<MeasuredAnswer>().Produces(StatusCodes.Status200OK, contentType: Csv).ProducesValidationProblem(422);
        api.MapGet("/jars/{number:int}/course", CourseAsync).WithTags("jars")
            .WithSummary("The course of a jar as its picture shows it: measured, expected and entered.")
            .WithDescription("CSV comes by 'Accept: text/csv' or by 'format=csv'.")
            .Produces<CourseAnswer>().Produces(StatusCodes.Status200OK, contentType: Csv).ProducesProblem(404).ProducesValidationProblem(422);
    }

    private static async Task<IResult> AskAsync(
        string? place, string? sensor, string? jar, string? quantity, string? from, string? to, string? points, string? format, AskHistory ask,
            HttpRequest request, CancellationToken cancellationToken)
    {
        if (IsCsv(format, request) is not { } asCsv)
            return NoSuchFormat(format!);
        HistoryAnswer answer = await ask.DoAsync(new HistoryForm(place, sensor, jar, quantity, from, to, points), cancellationToken);
        return answer.Refusals.Count > 0 ? RefusalProblem.Of(answer.Refusals)
            : asCsv ? Results.Text(CsvOf(answer), Csv, Encoding.UTF8) : Results.Ok(MeasuredAnswer.Of(answer));
    }

    private static async Task<IResult> CourseAsync(
        int number, string? format, JarReader jars, CourseReader courses, HttpRequest request, CancellationToken cancellationToken)
    {
        if (IsCsv(format, request) is not { } asCsv)
            return NoSuchFormat(format!);
        if (await jars.FindAsync(number, cancellationToken) is not { } view)
            return RefusalProblem.NotThere($"jar {number}");
        CourseAnswer course = CourseAnswer.Of(await courses.OfAsync(view, cancellationToken));
        return asCsv ? Results.Text(CourseCsv.Of(course), Csv, Encoding.UTF8) : Results.Ok(course);
    }

    /// <summary>Whether CSV is wanted and not JSON; null where another format was named.</summary>
    private static bool? IsCsv(string? format, HttpRequest request) => format?.Trim().ToLowerInvariant() switch
    {
        null or "" => request.GetTypedHeaders().Accept.Any(type => type.MediaType.Equals(Csv, StringComparison.OrdinalIgnoreCase)),
        "csv" => true,
        "json" => false,
        _ => null,
    };

    private static IResult NoSuchFormat(string format) => RefusalProblem.Of([new Refusal("format", format, "json or csv would be right")]);

    private static string CsvOf(HistoryAnswer answer)
    {
        var lines = new StringBuilder("at,mean_in_unit_of_quantity,minimum_in_unit_of_quantity,maximum_in_unit_of_quantity,readings,quantity,unit\n");
        MeasuredQuantity quantity = MeasuredQuantity.Of(answer.Span.Quantity);
        foreach (ReadingMean point in answer.Measured.Points)
            lines.Append(InstantPattern.ExtendedIso.Format(point.Start)).Append(',').Append(CultureInfo.InvariantCulture,
                $"{Round(point.Value)},{Round(point.Minimum)},{Round(point.Maximum)},{point.Count},{quantity.Name},{quantity.StoredUnit.Symbol}\n");
        return lines.ToString();
    }
}
