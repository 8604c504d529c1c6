using FermentWatch.Web.Pages.Layout;

namespace FermentWatch.Web.Gates;

/// <summary>A page with a few words and the way to the first page, for answers made before any page of ours is asked.</summary>
internal static class BarePage
{
    /// <param name="context">The request, whose answer has not begun.</param>
    /// <param name="status">The answer's status.</param>
    /// <param name="head">The heading.</param>
    /// <param name="words">What to do, in HTML of our own: nothing that came with the request stands in it.</param>
    public static Task WriteAsync(HttpContext context, int status, string head, string words)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = "text/html; charset=utf-8";
        return context.Response.WriteAsync(
            "<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">"
            + $"<base href=\"{context.Request.PathBase}/\"><title>{head}</title><link rel=\"stylesheet\" href=\"{StyleSheet.Address}\"></head>"
            + $"<body><div class=\"door\"><main><h1>{head}</h1><p>{words}</p><p><a class=\"button\" href=\"./\">To the first page</a></p></main></div></body></html>");
    }
}
