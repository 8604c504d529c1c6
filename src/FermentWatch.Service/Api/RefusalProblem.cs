using FermentWatch.Kinetics;

namespace FermentWatch.Service.Api;

/// <summary>Turns refusals into problem details (RFC 9457): which field, what came, what would be right.</summary>
internal static class RefusalProblem
{
    /// <summary>The answer for input that was understood and cannot be used: 422.</summary>
    public static IResult Of(IReadOnlyList<Refusal> refusals) => Results.ValidationProblem(
        refusals.GroupBy(refusal => refusal.Field).ToDictionary(field => field.Key, field => field.Select(refusal => refusal.ToString()).ToArray()),
        title: "Some of this cannot be used.",
        statusCode: StatusCodes.Status422UnprocessableEntity,
        extensions: new Dictionary<string, object?>
        {
            ["refusals"] = refusals.Select(refusal => new { field = refusal.Field, came = refusal.Came, would_be_right = refusal.WouldBeRight }),
        });

    /// <summary>The answer where there is nothing: 404.</summary>
    public static IResult NotThere(string what) => Results.Problem(title: $"There is no {what}.", statusCode: StatusCodes.Status404NotFound);
}
