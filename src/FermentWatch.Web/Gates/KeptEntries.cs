using System.Globalization;
using System.Security.Claims;
using FermentWatch.Web.Accounts;
using NodaTime;

namespace FermentWatch.Web.Gates;

/// <summary>
/// Forms that were typed where there was no reception and are sent later by the phone that kept them, with no person looking. They are
/// the same forms at the same doors. What differs: they say how long they lay, by which an entry gets the time it was typed; and the answer
/// is a status and not a page. 200 and only 200 means that it is written down.
/// </summary>
public static class KeptEntries
{
    /// <summary>The header that says how many seconds it lay. Counted on the phone alone, so that its clock need not be right.</summary>
    public const string Header = "X-FermentWatch-Kept";

    /// <summary>The header of the answer that names the page on which stands what was written down.</summary>
    public const string To = "FermentWatch-To";

    private const string AdultOnly = "?adult=1";

    /// <summary>What is older has to be entered by a person, who says of which day it is.</summary>
    private static readonly Duration Oldest = Duration.FromDays(7);

    /// <summary>Whether a request brings such a form.</summary>
    public static bool Is(HttpRequest request) => request.Headers.ContainsKey(Header);

    /// <summary>Stands behind the sign-in, before the doors.</summary>
    public static async Task PassAsync(HttpContext context, RequestDelegate next)
    {
        if (!Is(context.Request))
        {
            await next(context);
            return;
        }
        if (ReadAge(context.Request) is not { } age)
        {
            await Results.Problem(statusCode: StatusCodes.Status422UnprocessableEntity, title: "It lay too long to be sent by itself.",
                detail: $"{Header} holds the seconds since it was typed, 0 to {Oldest.TotalSeconds.ToString(CultureInfo.InvariantCulture)}.")
                    .ExecuteAsync(context);
            return;
        }
        // It goes with the person, so that no page has to hand it on and none can forget it.
        context.User.AddIdentity(
            new ClaimsIdentity([new Claim(PersonRoles.KeptClaim, age.TotalSeconds.ToString("R", CultureInfo.InvariantCulture))]));
        context.Response.OnStarting(() => SayWhatBecameOfIt(context.Response));
        await next(context);
    }

    private static Duration? ReadAge(HttpRequest request) =>
        double.TryParse(request.Headers[Header], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double seconds)
            && seconds >= 0 && seconds <= Oldest.TotalSeconds ? Duration.FromSeconds(seconds) : null;

    /// <summary>A form that was taken leads to the page that says so. A phone is told which; it follows when a person looks.</summary>
    private static Task SayWhatBecameOfIt(HttpResponse response)
    {
        if (response.StatusCode is StatusCodes.Status302Found or StatusCodes.Status303SeeOther)
        {
            string to = response.Headers.Location.ToString();
            response.Headers.Remove("Location");
            response.Headers[To] = to;
            response.StatusCode = to.EndsWith(AdultOnly, StringComparison.Ordinal) ? StatusCodes.Status403Forbidden : StatusCodes.Status200OK;
        }
        return Task.CompletedTask;
    }
}
