using FermentWatch.Web.Pages.Layout;
using Microsoft.AspNetCore.Antiforgery;

namespace FermentWatch.Web.Gates;

/// <summary>
/// What every answer tells the browser not to do. No page needs a script, so none is allowed but on the page of notices, where ours
/// may offer push, where a kitchen is set up, where ours may offer the browser's time zone, on the round, whose boards say what they write
/// and which is kept for where there is no reception, where it is said what a phone has not sent yet, where a sensor is waited for,
/// where jars are put up, where pictures are, and where what is asked takes longer than a moment.
/// </summary>
public static class SecurityHeaders
{
    private const string ContentPolicy =
        "default-src 'none'; manifest-src 'self'; style-src 'self'; img-src 'self' data:; form-action 'self'; base-uri 'self'; frame-ancestors "
        + "'none'";

    private const string ScriptPolicy = ContentPolicy + "; script-src 'self'";

    private const string OfferPolicy = ScriptPolicy + "; worker-src 'self'; connect-src 'self'";

    // Pictures ask for their figures, and for finer ones where people look closer; the put-up form asks how much salt.
    private const string PicturePolicy = ScriptPolicy + "; connect-src 'self'";

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
        "/" or "/round" or "/notices" or "/unsent" => OfferPolicy,
        KitchenWorker.Path => PicturePolicy,
        "/sign-in" => ScriptPolicy,
        _ when path.StartsWithSegments("/set-up") => ScriptPolicy,
        _ when Asks(path) || MaySeeAReadingArrive(path) => PicturePolicy,
        _ => ContentPolicy,
    };

    /// <summary>A jar, jars side by side, what was measured anywhere; and the form that works out salt.</summary>
    private static bool Asks(PathString path)
    {
        if (path.Value is "/history" or "/put-up")
            return true;
        string[] parts = path.StartsWithSegments("/jars", out PathString rest) ? (rest.Value ?? "").Trim('/').Split('/') : [""];
        return parts[0].Length > 0 && parts[0].All(char.IsAsciiDigit) && (parts.Length == 1 || parts is [_, "beside" or "what-if"]);
    }

    /// <summary>Where a sensor is added, set up again, and waited for.</summary>
    private static bool MaySeeAReadingArrive(PathString path) =>
        path.StartsWithSegments("/sensors", out PathString rest) && (rest.Value ?? "").Trim('/').Split('/') is [{ Length: > 0 }] or [_, "first"];

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

/// <summary>Nothing but the token against forged forms, which the binding of a form makes the framework ask for.</summary>
public sealed class SignOutForm;

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
            + $"<body><div class=\"door\"><main><h1>{head}</h1><p>{words}</p><p><a class=\"button\" href=\"./\">To the first "
            + "page</a></p></main></div></body></html>");
    }
}

/// <summary>
/// A button that is gone from its page when it is pressed once more: a second tap, or somebody was faster. The framework finds no form
/// of that name and answers 400; people get the page as it stands now, and nothing is done again.
/// </summary>
public static class DoneAlready
{
    /// <summary>Leads such a form to its page.</summary>
    public static async Task LeadAsync(HttpContext context, RequestDelegate next)
    {
        await next(context);
        HttpRequest request = context.Request;
        bool isOurForm = HttpMethods.IsPost(request.Method) && context.Features.Get<IAntiforgeryValidationFeature>() is { IsValid: true }
            && request.HasFormContentType && request.Form.ContainsKey("_handler");
        if (!isOurForm || context.Response.HasStarted || context.Response.StatusCode != StatusCodes.Status400BadRequest)
            return;
        if (KeptEntries.Is(request))
        {
            context.Response.StatusCode = StatusCodes.Status409Conflict;
            return;
        }
        context.Response.Clear();
        context.Response.StatusCode = StatusCodes.Status303SeeOther;
        context.Response.Headers.Location = $"{request.PathBase}{request.Path}{request.QueryString}";
    }
}
