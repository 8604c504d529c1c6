using FermentWatch.Web.Pages.Layout;

namespace FermentWatch.Web.Gates;

/// <summary>
/// What every answer tells the browser not to do. No page needs a script, so none is allowed but on the page of notices, where ours
/// may offer push, where a kitchen is set up, where ours may offer the browser's time zone, and where pictures are.
/// </summary>
public static class SecurityHeaders
{
    private const string ContentPolicy =
        "default-src 'none'; style-src 'self'; img-src 'self' data:; form-action 'self'; base-uri 'self'; frame-ancestors 'none'";

    private const string SetUpPolicy = ContentPolicy + "; script-src 'self'";

    private const string OfferPolicy = SetUpPolicy + "; worker-src 'self'; connect-src 'self'";

    // Pictures ask for their figures, and for finer ones where people look closer.
    private const string PicturePolicy = SetUpPolicy + "; connect-src 'self'";

    private const string WorkerPolicy = ContentPolicy + "; connect-src 'self'";

    /// <summary>Sets the headers as the answer starts, whoever makes it: also when an error has cleared what was set before.</summary>
    public static Task Set(HttpContext context, RequestDelegate next)
    {
        string policy = PolicyOf(context.Request.Path);
        context.Response.OnStarting(() =>
        {
            // Where there is nothing there is no picture either.
            bool isThere = context.Response.StatusCode != StatusCodes.Status404NotFound;
            Write(context.Response.Headers, isThere ? policy : ContentPolicy);
            return Task.CompletedTask;
        });
        return next(context);
    }

    private static string PolicyOf(PathString path) => path.Value switch
    {
        "/notices" => OfferPolicy,
        PushWorker.Path => WorkerPolicy,
        _ when path.StartsWithSegments("/set-up") => SetUpPolicy,
        _ when HasPicture(path) => PicturePolicy,
        _ => ContentPolicy,
    };

    /// <summary>A jar, jars side by side, and what was measured anywhere.</summary>
    private static bool HasPicture(PathString path)
    {
        if (path.Value == "/history")
            return true;
        string[] parts = path.StartsWithSegments("/jars", out PathString rest) ? (rest.Value ?? "").Trim('/').Split('/') : [""];
        return parts[0].Length > 0 && parts[0].All(char.IsAsciiDigit) && (parts.Length == 1 || parts is [_, "beside"]);
    }

    private static void Write(IHeaderDictionary headers, string policy)
    {
        headers.ContentSecurityPolicy = policy;
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
