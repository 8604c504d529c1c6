using System.Text.Encodings.Web;
using FermentWatch.Storage;
using Microsoft.AspNetCore.Diagnostics;

namespace FermentWatch.Service.Pages.Web;

/// <summary>What goes out when an answer failed: problem details to scripts, a page to people. A full or failing disk is called that.</summary>
internal static class TroubleAnswer
{
    private const string OurFault = "It is the service's fault, not yours, and it is in its log.";

    public static Task WriteAsync(HttpContext context)
    {
        string? disk = StorageTrouble.WordsOf(context.Features.Get<IExceptionHandlerFeature>()?.Error);
        context.Response.StatusCode = disk is null ? StatusCodes.Status500InternalServerError : StatusCodes.Status503ServiceUnavailable;
        if (context.Request.Path.StartsWithSegments("/api"))
            return Results.Problem(title: disk ?? "Something went wrong in the service; it is in its log.", statusCode: context.Response.StatusCode).ExecuteAsync(context);
        context.Response.ContentType = "text/html; charset=utf-8";
        return context.Response.WriteAsync(Page(disk ?? OurFault));
    }

    private static string Page(string why) =>
        "<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">"
        + "<title>Something went wrong</title><link rel=\"stylesheet\" href=\"" + Layout.StyleSheet.Address + "\"></head><body><div class=\"door\"><main>"
        + "<h1>Something went wrong here</h1><p>" + HtmlEncoder.Default.Encode(why) + " What was entered before is kept. "
        + "What you have just entered is not stored: go back and try again.</p><p><a class=\"button\" href=\"/\">To the first page</a></p></main></div></body></html>";
}
