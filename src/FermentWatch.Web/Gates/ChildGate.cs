using FermentWatch.Acts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Web.Accounts;
using Microsoft.AspNetCore.Authorization;

namespace FermentWatch.Web.Gates;

/// <summary>
/// Lets a child's account read everything and send to the doors behind which lies an act that children may do; what settles anything is
/// an adult's. A door that names no act is an adult's.
/// </summary>
public static class ChildGate
{
    /// <summary>Passes a request on, or answers it: problem details to scripts, the first page with a word to people.</summary>
    public static Task PassAsync(HttpContext context, RequestDelegate next)
    {
        HttpRequest request = context.Request;
        bool reads = HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method);
        if (reads || context.User.Identity?.IsAuthenticated != true || IsOpen(context.GetEndpoint(), context.User.Role()))
            return next(context);
        if (request.Path.StartsWithSegments("/api"))
            return Results.Problem(title: "This is for an adult: a child's account looks and reports.",
                statusCode: StatusCodes.Status403Forbidden).ExecuteAsync(context);
        // See other: the browser asks for the page with the word, and sends nothing again.
        context.Response.StatusCode = StatusCodes.Status303SeeOther;
        context.Response.Headers.Location = $"{request.PathBase}/?adult=1";
        return Task.CompletedTask;
    }

    /// <summary>Names the act behind an endpoint.</summary>
    public static RouteHandlerBuilder Does<TAct>(this RouteHandlerBuilder endpoint) => endpoint.WithMetadata(new DoesAttribute(typeof(TAct)));

    private static bool IsOpen(Endpoint? door, MemberRole role) => role == MemberRole.Adult
        || door?.Metadata.GetMetadata<IAllowAnonymous>() is not null || door?.Metadata.GetMetadata<DoesAttribute>() is { } does
            && does.IsOpenTo(role);
}
