using FermentWatch.Kitchen.Members;

namespace FermentWatch.Service.Accounts;

/// <summary>Lets a child's account read everything, answer the round and have its own phone told; what settles anything is an adult's.</summary>
public static class ChildGate
{
    private static readonly string[] Open =
    [
        "/", "/round", "/week-sheet", "/sign-in", "/sign-out", "/password", "/api/v1/sign-in", "/api/v1/round/today/all-well",
        "/api/v1/round/today/seen", "/api/v1/round/today/taste", "/api/v1/notice-routes/web-push",
    ];

    private static readonly string[] OpenOfJars = ["seen", "taste"];

    /// <summary>Passes a request on, or answers it: problem details to scripts, the first page with a word to people.</summary>
    public static Task PassAsync(HttpContext context, RequestDelegate next)
    {
        HttpRequest request = context.Request;
        bool reads = HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method);
        if (reads || context.User.Identity?.IsAuthenticated != true || context.User.Role() == MemberRole.Adult || IsOpen(request.Path.Value ?? ""))
            return next(context);
        if (request.Path.StartsWithSegments("/api"))
            return Results.Problem(title: "This is for an adult: a child's account looks and reports.", statusCode: StatusCodes.Status403Forbidden).ExecuteAsync(context);
        // See other: the browser asks for the page with the word, and sends nothing again.
        context.Response.StatusCode = StatusCodes.Status303SeeOther;
        context.Response.Headers.Location = $"{request.PathBase}/?adult=1";
        return Task.CompletedTask;
    }

    private static bool IsOpen(string path)
    {
        string[] parts = path.Split('/', StringSplitOptions.RemoveEmptyEntries);
        return Open.Contains(path) || parts is ["photos", _] || parts is ["guest" or "answer", _] || parts is ["api", "v1", "answers", _] || (parts is ["jars", _, var what] && OpenOfJars.Contains(what));
    }
}
