using Microsoft.AspNetCore.Diagnostics;

namespace FermentWatch.Service.Pages.Web;

/// <summary>What goes out when a request could not be read, or the service itself failed: problem details to scripts, a page to people.</summary>
internal static class TroubleAnswer
{
    /// <summary>How the handler of errors tells the first from the second: only the second is the service's fault and in its log.</summary>
    public static int StatusOf(Exception? error) => error switch
    {
        BadHttpRequestException bad => bad.StatusCode,
        InvalidDataException => StatusCodes.Status400BadRequest,
        _ => StatusCodes.Status500InternalServerError,
    };

    public static Task WriteAsync(HttpContext context)
    {
        int status = StatusOf(context.Features.Get<IExceptionHandlerFeature>()?.Error);
        bool ours = status == StatusCodes.Status500InternalServerError;
        if (context.Request.Path.StartsWithSegments("/api"))
            return Results.Problem(title: ours ? "Something went wrong in the service; it is in its log." : "What was sent cannot be read: too large, not whole, or of another form than the description at openapi/v1.json says.", statusCode: status).ExecuteAsync(context);
        return ours
            ? BarePage.WriteAsync(context, status, "Something went wrong here",
                "It is the service's fault, not yours, and it is in its log. What was entered before is kept. Go back and try again.")
            : BarePage.WriteAsync(context, status, "This could not be read",
                "What was sent is too large, not whole, or no form of this kitchen. Nothing was written down. Go back, load the page again, and try once more.");
    }
}
