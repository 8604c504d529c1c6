using FermentWatch.Acts.Sensors;
using FermentWatch.Web.Api.Answers;
using FermentWatch.Web.Gates;

namespace FermentWatch.Web.Api;

/// <summary>Sensors that were not made for us: the rules by which they are read, and what is offered.</summary>
internal static class SourceEndpoints
{
    public static void MapSources(this RouteGroupBuilder api)
    {
        RouteGroupBuilder sources = api.MapGroup("").WithTags("sensors");
        sources.MapGet("/source-rules", RulesAsync).WithSummary("How sensors that were not made for us are read.").Produces<SourceRuleAnswer[]>();
        sources.MapPost("/source-rules",
            AddAsync).Does<ReadByRule>().WithSummary("Adds a rule.").Produces<SourceRuleAnswer>(201).ProducesValidationProblem(422);
        sources.MapDelete("/source-rules/{id:guid}",
            RemoveAsync).Does<ReadByRule>().WithSummary("Removes a rule; what it stored stays.").Produces(204).ProducesProblem(404);
        sources.MapGet("/offers", (TakeOffer desk) => Results.Ok(desk.All.Select(OfferAnswer.Of)))
            .WithSummary("Unknown topics that carry what looks like a temperature or pH.").Produces<OfferAnswer[]>();
        sources.MapPost("/offers/take", TakeAsync).Does<TakeOffer>().WithSummary("Makes a sensor of an offer and gives it to a place or a jar.")
            .Produces<TakenSensorAnswer>(201).ProducesValidationProblem(422);
    }

    private static async Task<IResult> RulesAsync(ReadByRule desk, CancellationToken cancellationToken) =>
        Results.Ok((await desk.AllAsync(cancellationToken)).Select(SourceRuleAnswer.Of));

    private static async Task<IResult> AddAsync(RuleForm form, ReadByRule desk, CancellationToken cancellationToken)
    {
        RuleEntry entry = await desk.AddAsync(form, cancellationToken);
        return entry.Rule is { } rule ? Results.Created($"/api/v1/source-rules/{rule.Id}", SourceRuleAnswer.Of(rule))
            : RefusalProblem.Of(entry.Refusals);
    }

    private static async Task<IResult> RemoveAsync(Guid id, ReadByRule act, CancellationToken cancellationToken) =>
        await act.RemoveAsync(id, cancellationToken) ? Results.NoContent() : RefusalProblem.NotThere($"rule {id}");

    private static async Task<IResult> TakeAsync(OfferForm form, TakeOffer desk, CancellationToken cancellationToken)
    {
        var (sensor, refusals) = await desk.TakeAsync(form, cancellationToken);
        return sensor is null ? RefusalProblem.Of(refusals) : Results.Created($"/api/v1/sensors/{sensor.Slug}", new TakenSensorAnswer(sensor.Slug));
    }
}
