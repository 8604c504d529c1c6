namespace FermentWatch.Service.Pages.Web;

/// <summary>What every answer tells the browser not to do. No page needs a script, so none is allowed.</summary>
public static class SecurityHeaders
{
    private const string ContentPolicy =
        "default-src 'none'; style-src 'self'; img-src 'self' data:; form-action 'self'; base-uri 'self'; frame-ancestors 'none'";

    /// <summary>Sets the headers before the answer starts.</summary>
    public static Task Set(HttpContext context, RequestDelegate next)
    {
        IHeaderDictionary headers = context.Response.Headers;
        headers.ContentSecurityPolicy = ContentPolicy;
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers["Referrer-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=(), payment=()";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers.CacheControl = "no-store";
        return next(context);
    }
}
