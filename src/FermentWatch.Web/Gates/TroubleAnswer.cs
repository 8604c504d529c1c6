using FermentWatch.Kitchen.Health;
using Microsoft.AspNetCore.Diagnostics;

namespace FermentWatch.Web.Gates;

/// <summary>
/// What goes out when a request could not be read, the disk failed, or the service itself did: problem details to scripts, a page to
/// people.
/// </summary>
internal static class TroubleAnswer
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
            _ => ("What was sent cannot be read: too large, not whole, or of another form than the description at openapi/v1.json says.",
                "This could not be read",
                "What was sent is too large, not whole, or no form of this kitchen. Nothing was written down. Go back, load the page again, and try once more."),
        };
        return context.Request.Path.StartsWithSegments("/api")
            ? Results.Problem(title: title, statusCode: status).ExecuteAsync(context)
            : BarePage.WriteAsync(context, status, head, body);
    }
}
