using FermentWatch.Web.Accounts;

namespace FermentWatch.Web.Gates;

/// <summary>Says on every answer to somebody who is signed in whose it is: a phone keeps pages and entries for one person, and not for the
/// next.</summary>
internal static class PersonHeader
{
    public const string Name = "FermentWatch-Person";

    public static Task Set(HttpContext context, RequestDelegate next)
    {
        if (context.User.Identity?.IsAuthenticated == true && context.User.Known().AccountId is { } account)
            context.Response.Headers[Name] = account.ToString("N");
        return next(context);
    }
}
