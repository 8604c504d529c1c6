namespace FermentWatch.Service.Pages.Web;

/// <summary>What every answer tells the browser not to do. No page needs a script, so none is allowed.</summary>
public static class SecurityHeaders
{
    private const string ContentPolicy =
        "default-src 'none'; style-src 'self'; img-src 'self' data:; form-action 'self'; base-uri 'self'; frame-ancestors 'none'";

    /// <summary>Sets the headers as the answer starts, whoever makes it: also when an error has cleared what was set before.</summary>
    public static Task Set(HttpContext context, RequestDelegate next)
    {
        context.Response.OnStarting(() =>
        {
            Write(context.Response.Headers);
            return Task.CompletedTask;
        });
        return next(context);
    }

    private static void Write(IHeaderDictionary headers)
    {
        headers.ContentSecurityPolicy = ContentPolicy;
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers["Referrer-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=(), payment=()";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        if (headers.CacheControl.Count == 0 || headers.CacheControl.ToString().StartsWith("no-cache", StringComparison.Ordinal))
            headers.CacheControl = "no-store";
    }
}
