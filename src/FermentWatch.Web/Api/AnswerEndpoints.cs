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

/// <summary>All well.</summary>
/// <param name="PlaceId">The shelf; null for every shelf.</param>
/// <param name="Except">Numbers that are left open.</param>
/// <param name="Opened">Whether the jars were opened.</param>
public sealed record AllWellForm(Guid? PlaceId, IReadOnlyList<int>? Except, bool Opened);

/// <summary>An answer for one jar.</summary>
/// <param name="Jar">Its number.</param>
/// <param name="What">What was seen, how it tastes, or where it goes, by name.</param>
/// <param name="Note">A few words; needed for something else seen and for throwing out.</param>
public sealed record JarAnswerForm(int Jar, string? What, string? Note);

/// <summary>Where a jar goes.</summary>
/// <param name="Jar">Its number.</param>
/// <param name="What"><c>Cold</c>, <c>Finished</c> or <c>ThrownOut</c>.</param>
/// <param name="Note">A few words; needed for throwing out.</param>
/// <param name="Went">Where a finished jar went: <c>Eaten</c>, <c>GivenAway</c>, <c>Frozen</c> or <c>Canned</c>; left out where nobody says.</param>
/// <param name="GivenTo">To whom it was given, up to 60 letters; only with <c>GivenAway</c>, and left out where nobody says.</param>
public sealed record StageForm(int Jar, string? What, string? Note, string? Went = null, string? GivenTo = null);

/// <summary>All well, or later, by a link.</summary>
/// <param name="Opened">Whether the jars that were to be opened were opened.</param>
/// <param name="Later">Asks again in two hours instead.</param>
public sealed record LinkAnswerForm(bool Opened, bool Later = false);

/// <summary>What a sensor measures from now on.</summary>
/// <param name="Where"><c>place NAME</c>, <c>jar NUMBER</c> or <c>nowhere</c>.</param>
public sealed record GiveSensorForm(string? Where);
