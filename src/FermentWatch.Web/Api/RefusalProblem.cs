using FermentWatch.Kinetics;
using FermentWatch.Kitchen.PuttingUp;

namespace FermentWatch.Web.Api;

/// <summary>Turns refusals into problem details (RFC 9457): which field, what came, what to enter.</summary>
internal static class RefusalProblem
{
    /// <summary>The answer for input that was understood and cannot be used: 422.</summary>
    public static IResult Of(IReadOnlyList<Refusal> refusals) => Results.ValidationProblem(
        refusals.GroupBy(refusal => refusal.Field).ToDictionary(field => field.Key, field => field.Select(refusal => refusal.ToString()).ToArray()),
        title: "Some of this cannot be used.",
        statusCode: StatusCodes.Status422UnprocessableEntity,
        extensions: new Dictionary<string, object?>
        {
            ["refusals"] = refusals.Select(refusal =>
                new { field = refusal.Field, came = refusal.Came, would_be_right = refusal.WouldBeRight, enter = refusal.ToEnter() }),
        });

    /// <summary>The answer for input that is odd: 422, with what is asked; <c>it_is_right</c> insists on it.</summary>
    public static IResult Of(IReadOnlyList<Refusal> refusals, IReadOnlyList<Doubt> doubts) => doubts.Count == 0 ? Of(refusals) : Results.Problem(
        title: "Is this right? Then send it again with it_is_right.", detail: string.Join(" ", doubts.Select(doubt => doubt.Question)),
        statusCode: StatusCodes.Status422UnprocessableEntity,
        extensions: new Dictionary<string, object?> { ["questions"] = doubts.Select(doubt =>
            new { field = doubt.Field, question = doubt.Question }) });

    /// <summary>The answer for a key that was used with another body: 409.</summary>
    public static IResult KeyUsed(string words) =>
        Results.Problem(title: "This Idempotency-Key was used before with another body. Nothing was done.", detail: words,
            statusCode: StatusCodes.Status409Conflict);

    /// <summary>The answer where there is nothing: 404.</summary>
    public static IResult NotThere(string what) => Results.Problem(title: $"There is no {what}.", statusCode: StatusCodes.Status404NotFound);
}
