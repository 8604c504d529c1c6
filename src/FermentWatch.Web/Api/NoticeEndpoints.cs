using System.Security.Claims;
using FermentWatch.Acts.Notices;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Web.Accounts;
using FermentWatch.Web.Api.Answers;
using FermentWatch.Web.Gates;

namespace FermentWatch.Web.Api;

/// <summary>How people are reached, and what became of the notices.</summary>
internal static class NoticeEndpoints
{
    private const int ShownUsually = 100, ShownAtMost = 1000;

    public static void MapNotices(this RouteGroupBuilder api)
    {
        RouteGroupBuilder notices = api.MapGroup("").WithTags("notices");
        notices.MapGet("/notice-routes", RoutesAsync).WithSummary("How people are reached; secrets are not shown.").Produces<NoticeRouteAnswer[]>();
        notices.MapPost("/notice-routes",
            AddAsync).Does<ReachPeople>().WithSummary("Adds a way to reach somebody.").Produces<NoticeRouteAnswer>(201)
                .ProducesValidationProblem(422);
        notices.MapPost("/notice-routes/web-push",
            AddPhoneAsync).Does<TellPhone>()
                .WithSummary("Has the browser that asks told by web push, as who is signed in there; the same again changes nothing.")
            .Produces<NoticeRouteAnswer>().Produces<NoticeRouteAnswer>(201).ProducesValidationProblem(422);
        notices.MapDelete("/notice-routes/{id:guid}", RemoveAsync).Does<ReachPeople>().WithSummary("Removes one.").Produces(204);
        notices.MapPost("/notice-routes/{id:guid}/test",
            TestAsync).Does<ReachPeople>().WithSummary("Sends a test message at once.").Produces<TestAnswer>();
        notices.MapGet("/notices", LatestAsync).WithSummary("The latest notices, and what is stuck and why.").Produces<NoticeAnswer[]>()
            .ProducesValidationProblem(422);
    }

    private static async Task<IResult> RoutesAsync(ClaimsPrincipal person, ReachPeople desk, CancellationToken cancellationToken) =>
        Results.Ok((await desk.RoutesAsync(cancellationToken)).Select(known => NoticeRouteAnswer.Of(known.Route, person.Role())));

    private static async Task<IResult> LatestAsync(ReachPeople desk, CancellationToken cancellationToken, int atMost = ShownUsually) =>
        atMost is < 1 or > ShownAtMost
            ? RefusalProblem.Of([new Refusal("atMost", $"{atMost}", $"a number from 1 to {ShownAtMost} would be right")])
            : Results.Ok((await desk.LatestAsync(atMost, cancellationToken)).Select(NoticeAnswer.Of));

    private static async Task<IResult> AddAsync(NoticeRouteForm form, ClaimsPrincipal person, ReachPeople desk, CancellationToken cancellationToken)
    {
        var input = new NoticeRouteInput { Person = form.Person, Channel = form.Channel, Address = form.Address, Secret = form.Secret };
        (NoticeRoute? route, IReadOnlyList<Refusal> refusals) = await desk.AddAsync(input, person.Known(), cancellationToken);
        return route is null ? RefusalProblem.Of(refusals)
            : Results.Created($"/api/v1/notice-routes/{route.Id}", NoticeRouteAnswer.Of(route, person.Role()));
    }

    private static async Task<IResult> AddPhoneAsync(PhoneInput form, ClaimsPrincipal person, TellPhone desk, CancellationToken cancellationToken)
    {
        (NoticeRoute? route, bool isNew, IReadOnlyList<Refusal> refusals) = await desk.AddAsync(person.Known(), form, cancellationToken);
        if (route is null)
            return RefusalProblem.Of(refusals);
        return isNew ? Results.Created($"/api/v1/notice-routes/{route.Id}", NoticeRouteAnswer.Of(route, person.Role()))
            : Results.Ok(NoticeRouteAnswer.Of(route, person.Role()));
    }

    private static async Task<IResult> TestAsync(Guid id, ReachPeople desk, CancellationToken cancellationToken) =>
        await desk.TestAsync(id, cancellationToken) is { } outcome ? Results.Ok(new TestAnswer(outcome.Result, outcome.Trouble))
            : Results.NotFound();

    private static async Task<IResult> RemoveAsync(Guid id, ReachPeople desk, CancellationToken cancellationToken)
    {
        await desk.RemoveAsync(id, cancellationToken);
        return Results.NoContent();
    }
}

/// <summary>How somebody is to be reached.</summary>
/// <param name="Person">The name the household uses.</param>
/// <param name="Channel"><c>Email</c>, <c>Webhook</c> or <c>Mqtt</c>.</param>
/// <param name="Address">Mail address, web address or topic.</param>
/// <param name="Secret">Key by which a webhook's body is signed.</param>
public sealed record NoticeRouteForm(string? Person, string? Channel, string? Address, string? Secret);

/// <summary>Whether a kind of occasion is muted.</summary>
/// <param name="Muted">True: nobody is told of it.</param>
public sealed record MuteForm(bool Muted);

/// <summary>Whether people are asked to taste.</summary>
/// <param name="Paused">True for a week without; false for again from today on.</param>
public sealed record PauseForm(bool Paused);
