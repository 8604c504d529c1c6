using FermentWatch.Acts.Rounds;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Web.Api.Answers;
using FermentWatch.Web.Gates;
using NodaTime;

namespace FermentWatch.Web.Api;

/// <summary>Answers by the token of a link, for notifications and scripts that have not signed in.</summary>
internal static class AnswerEndpoints
{
    public static void MapAnswers(this RouteGroupBuilder api) =>
        api.MapPost("/answers/{token}",
            AllWellAsync).Does<AnswerByLink>().WithTags("round").WithSummary("All well, or later, by the token of a notice's link; needs no sign-in.")
            .Produces<AnswerTaken>().ProducesProblem(404).ProducesProblem(410).AllowAnonymous();

    private static async Task<IResult> AllWellAsync(string token, LinkAnswerForm? form, AnswerByLink desk, CancellationToken cancellationToken)
    {
        if (form is { Later: true })
        {
            (OpenedLink found, Instant? again) = await desk.LaterAsync(token, cancellationToken);
            return Taken(found, new AnswerTaken(0, [], again?.ToString()));
        }
        (OpenedLink link, AnswerOutcome? outcome) = await desk.AllWellAsync(token, form?.Opened ?? false, cancellationToken);
        return Taken(link, new AnswerTaken(outcome?.Observations.Count ?? 0, outcome?.Known ?? []));
    }

    private static IResult Taken(OpenedLink link, AnswerTaken answer) => link.State switch
    {
        LinkState.Unknown => RefusalProblem.NotThere("such link"),
        LinkState.Expired => Results.Problem(title: "The day this link answered for is over.", statusCode: StatusCodes.Status410Gone),
        _ => Results.Ok(answer),
    };
}
