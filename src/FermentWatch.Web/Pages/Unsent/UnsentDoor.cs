using FermentWatch.Web.Accounts;
using Microsoft.AspNetCore.Antiforgery;

namespace FermentWatch.Web.Pages.Unsent;

/// <summary>
/// What a phone asks before it sends what it kept: who is signed in on it now, and the token that forms carry now. Both may have changed since
/// the form was shown. Only pages of ours can read the answer.
/// </summary>
internal static class UnsentDoor
{
    public static void MapUnsent(this WebApplication app) => app.MapGet("/api/v1/form-ticket", Ticket).ExcludeFromDescription();

    private static IResult Ticket(HttpContext context, IAntiforgery forgery)
    {
        AntiforgeryTokenSet tokens = forgery.GetAndStoreTokens(context);
        return Results.Json(new { person = context.User.Known().AccountId?.ToString("N"), field = tokens.FormFieldName,
            token = tokens.RequestToken });
    }
}
