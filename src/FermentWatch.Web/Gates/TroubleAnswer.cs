using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Typed;
using FermentWatch.Web.Pages.Photos;
using Microsoft.AspNetCore.Diagnostics;

namespace FermentWatch.Web.Gates;

/// <summary>
/// What goes out when a request could not be read, the disk failed, or the service itself did: problem details to scripts, a page to
/// people.
/// </summary>
internal static partial class TroubleAnswer
{
    /// <summary>How the handler of errors tells them apart: only what is left is the service's fault and in its log.</summary>
    public static Func<Exception?, int> StatusOf(IDiskTrouble disk) => error => error switch
    {
        BadHttpRequestException bad => bad.StatusCode,
        InvalidDataException => StatusCodes.Status400BadRequest,
        _ when disk.WordsOf(error) is not null => StatusCodes.Status503ServiceUnavailable,
        _ => StatusCodes.Status500InternalServerError,
    };

    public static Task WriteAsync(HttpContext context)
    {
        Exception? error = context.Features.Get<IExceptionHandlerFeature>()?.Error;
        var disk = context.RequestServices.GetRequiredService<IDiskTrouble>();
        int status = StatusOf(disk)(error);
        (string title, string head, string body) = status switch
        {
            StatusCodes.Status500InternalServerError => ("Something went wrong in the service; it is in its log.", "Something went wrong here",
                "It is the service's fault, not yours, and it is in its log. What was entered before is kept. Go back and try again."),
            StatusCodes.Status503ServiceUnavailable => (disk.WordsOf(error)!, "It could not be written down",
                $"{disk.WordsOf(error)} What you have just entered is not stored: go back and try again when that is mended."),
            StatusCodes.Status413PayloadTooLarge => ("What was sent is larger than is taken here.", "That is too large",
                $"A photo may have {SmallPhoto.LargestFile >> 20} MB, everything else far less. Nothing was written down, and what was there is "
                + "kept. Go back and send a smaller one."),
            _ => ("What was sent cannot be read: too large, not whole, or of another form than the description at openapi/v1.json says.",
                "This could not be read",
                "What was sent is too large, not whole, or no form of this kitchen. Nothing was written down. Go back, load the page again, and try "
                + "once more."),
        };
        return context.Request.Path.StartsWithSegments("/api")
            ? Results.Problem(title: title, detail: WhereOf(error), statusCode: status).ExecuteAsync(context)
            : BarePage.WriteAsync(context, status, head, body);
    }

    /// <summary>Where a body could not be read, as far as its reader knows; null where that says nothing.</summary>
    private static string? WhereOf(Exception? error) => error switch
    {
        BadHttpRequestException { InnerException: JsonException { Path: { Length: > 2 } path } } =>
            $"At {SafeText.ForLog(path)}: there is no such field, its value is of another kind, or the text breaks off.",
        BadHttpRequestException { InnerException: JsonException { LineNumber: { } line, BytePositionInLine: { } position } } =>
            string.Create(CultureInfo.InvariantCulture, $"It is no JSON of an object from line {line + 1}, byte {position + 1} on."),
        BadHttpRequestException { InnerException: JsonException } => "JSON of one object would be right.",
        BadHttpRequestException bad when Unbound().Match(bad.Message) is { Success: true, Groups: var said } =>
            $"'{SafeText.ForLog(said["value"].Value)}' is no {said["name"].Value} of the kind that the description has.",
        BadHttpRequestException bad when bad.Message.Contains("no body was provided", StringComparison.Ordinal) =>
            "Nothing was sent: JSON of one object would be right.",
        _ => null,
    };

    [GeneratedRegex("^Failed to bind parameter \"\\S+ (?<name>\\w+)\" from \"(?<value>.*)\"\\.$", RegexOptions.Singleline)]
    private static partial Regex Unbound();
}
