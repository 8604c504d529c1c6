using FermentWatch.Acts;
using FermentWatch.Kitchen.Members;
using FermentWatch.Web.Accounts;

namespace FermentWatch.Web.Gates;

/// <summary>Lets a script as far as its key goes. A door that names no act and changes something is for scripts that may manage.</summary>
internal static class ScriptGate
{
    public static Task PassAsync(HttpContext context, RequestDelegate next)
    {
        // Where there is no door, or none for this method, the answer is that there is none.
        if (ScriptKeys.ScopeOf(context.User) is not { } scope || context.GetEndpoint() is not RouteEndpoint door
            || NeededAt(door, context.Request.Method) is var needed && scope >= needed)
            return next(context);
        string word = needed.ToString().ToLowerInvariant();
        context.Response.Headers.WWWAuthenticate = $"Bearer error=\"insufficient_scope\", scope=\"{word}\"";
        return Results.Problem(title: $"This key may not do that: one that may {word} would be right. Nothing was changed.",
            statusCode: StatusCodes.Status403Forbidden).ExecuteAsync(context);
    }

    private static ScriptScope NeededAt(RouteEndpoint door, string method)
    {
        if (door.Metadata.GetMetadata<DoesAttribute>() is { } does)
            return does.Needs;
        return HttpMethods.IsGet(method) || HttpMethods.IsHead(method) ? ScriptScope.Read : ScriptScope.Manage;
    }
}
