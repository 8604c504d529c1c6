using System.Runtime.ExceptionServices;
using FermentWatch.Web.Accounts;
using Microsoft.AspNetCore.Antiforgery;

namespace FermentWatch.Web.Gates;

/// <summary>
/// Takes writes only from our own pages and from scripts, never from a page elsewhere that uses somebody's cookie: a form carries the
/// token its page was given, a call of the API a header that no foreign page can set without being asked first (Fetch standard, CORS).
/// </summary>
public static class ForgeryGate
{
    /// <summary>The header that a call of the API carries beside the cookie; any value will do.</summary>
    public const string Header = "X-FermentWatch";

    /// <summary>Stands before the check of forms, as it reads nothing of them.</summary>
    public static Task PassCallAsync(HttpContext context, RequestDelegate next)
    {
        HttpRequest request = context.Request;
        bool reads = HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method) || HttpMethods.IsOptions(request.Method);
        if (reads || !request.Path.StartsWithSegments("/api") || context.User.Identity?.IsAuthenticated != true
            || context.User.Identity.AuthenticationType == ScriptKeys.Named || request.Headers.ContainsKey(Header))
            return next(context);
        return Results.Problem(
            title: $"The header {Header} is missing.", statusCode: StatusCodes.Status400BadRequest,
            detail: $"A write that is signed in by cookie carries the header '{Header}: 1', so that no page elsewhere can send it in your name.")
                .ExecuteAsync(context);
    }

    /// <summary>Stands behind the check of forms, and says what it found in words.</summary>
    /// <exception cref="BadHttpRequestException">The form could not be read to its end: too large, or broken off.</exception>
    public static Task PassFormAsync(HttpContext context, RequestDelegate next)
    {
        IAntiforgeryValidationFeature? check = context.Features.Get<IAntiforgeryValidationFeature>();
        if (check?.Error?.InnerException is BadHttpRequestException unread)
            ExceptionDispatchInfo.Throw(unread);
        return check is { IsValid: false }
            ? BarePage.WriteAsync(context, StatusCodes.Status400BadRequest, "This form is not from an open page",
                "It may have been open since before the last sign-in, or cookies are off. Nothing was written down. Go back, load the page again, "
                + "and send it once more.")
            : next(context);
    }
}
