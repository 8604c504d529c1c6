namespace FermentWatch.Service.Pages.Web;

/// <summary>What goes out when the service itself failed: problem details to scripts, a page to people.</summary>
internal static class TroubleAnswer
{
    private static string Page { get; } =
        "<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">"
        + "<title>Something went wrong</title><link rel=\"stylesheet\" href=\"" + Layout.StyleSheet.Address + "\"></head><body><div class=\"door\"><main>"
        + "<h1>Something went wrong here</h1><p>It is the service's fault, not yours, and it is in its log. What was entered before is kept. "
        + "Go back and try again.</p><p><a class=\"button\" href=\"/\">To the first page</a></p></main></div></body></html>";

    public static Task WriteAsync(HttpContext context)
    {
        context.Response.StatusCode = StatusCodes.Status500InternalServerError;
        if (context.Request.Path.StartsWithSegments("/api"))
            return Results.Problem(title: "Something went wrong in the service; it is in its log.", statusCode: StatusCodes.Status500InternalServerError).ExecuteAsync(context);
        context.Response.ContentType = "text/html; charset=utf-8";
        return context.Response.WriteAsync(Page);
    }
}
