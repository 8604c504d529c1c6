using System.Security.Claims;
using FermentWatch.Acts;
using FermentWatch.Acts.Rounds;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Kitchen.Typed;
using FermentWatch.Web.Accounts;
using FermentWatch.Web.Api.Answers;
using FermentWatch.Web.Gates;
using Microsoft.AspNetCore.Mvc;

namespace FermentWatch.Web.Api;

/// <summary>Today's round and the answers to it.</summary>
internal static class RoundEndpoints
{
    private const string RepeatKey = "Idempotency-Key";

    public static void MapRound(this RouteGroupBuilder api)
    {
        RouteGroupBuilder round = api.MapGroup("/round").WithTags("round");
        round.MapGet("/today", TodayAsync).WithSummary("What is to be looked at today.").Produces<RoundAnswer>();
        round.MapPost("/today/all-well",
            AllWellAsync).Does<SayAllWell>().WithSummary("All well, except these.").Produces<AnswerTaken>().ProducesValidationProblem(422);
        round.MapPost("/today/seen", SeenAsync).Does<ReportSeen>().WithSummary("What was seen at one jar.").Produces<AnswerTaken>()
            .ProducesValidationProblem(422);
        round.MapPost("/today/taste", TasteAsync).Does<ReportTaste>().WithSummary("How one jar tastes.").Produces<AnswerTaken>()
            .ProducesValidationProblem(422);
        round.MapPost("/today/handled",
            HandledAsync).Does<SettleTrouble>().WithSummary("What was done about one jar.").Produces<AnswerTaken>().ProducesValidationProblem(422);
        round.MapPost("/not-tasting", NotTastingAsync).Does<PauseTasting>()
            .WithSummary("Not tasting this week; with paused false, again from today on.").Produces(204);
        round.MapPost("/today/stage", StageAsync).Does<ChangeStage>()
            .WithSummary("Into the cold; finished: eaten, given away, frozen or canned; thrown out.").Produces<AnswerTaken>()
            .ProducesValidationProblem(422);
    }

    private static async Task<IResult> TodayAsync(RoundReader reader, CancellationToken cancellationToken) =>
        Results.Ok(RoundAnswer.Of((await reader.TodayAsync(cancellationToken)).Sheet));

    private static async Task<IResult> AllWellAsync(
        AllWellForm form, [FromHeader(Name = RepeatKey)] Guid? key, ClaimsPrincipal person, SayAllWell act, CancellationToken cancellationToken) =>
        Taken(await act.DoAsync(form.PlaceId, (form.Except ?? []).ToHashSet(), form.Opened, Mark(key, person), cancellationToken));

    private static async Task<IResult> SeenAsync(
        JarAnswerForm form, [FromHeader(Name = RepeatKey)] Guid? key, ClaimsPrincipal person, ReportSeen act, CancellationToken cancellationToken)
    {
        var reader = new FieldReader();
        SightingKind kind = Choice<SightingKind>(reader, "what", form.What);
        return reader.Refusals.Count > 0 ? RefusalProblem.Of(reader.Refusals)
            : Taken(await act.DoAsync(form.Jar, kind, form.Note, Mark(key, person), cancellationToken));
    }

    private static async Task<IResult> TasteAsync(
        JarAnswerForm form, [FromHeader(Name = RepeatKey)] Guid? key, ClaimsPrincipal person, ReportTaste act, CancellationToken cancellationToken)
    {
        var reader = new FieldReader();
        TasteVerdict verdict = Choice<TasteVerdict>(reader, "what", form.What);
        return reader.Refusals.Count > 0 ? RefusalProblem.Of(reader.Refusals)
            : Taken(await act.DoAsync(form.Jar, verdict, Mark(key, person), cancellationToken));
    }

    private static async Task<IResult> HandledAsync(
        JarAnswerForm form, [FromHeader(Name = RepeatKey)] Guid? key, ClaimsPrincipal person, SettleTrouble act, CancellationToken cancellationToken)
    {
        var reader = new FieldReader();
        HandlingKind kind = Choice<HandlingKind>(reader, "what", form.What);
        return reader.Refusals.Count > 0 ? RefusalProblem.Of(reader.Refusals)
            : Taken(await act.DoAsync(form.Jar, kind, Mark(key, person), cancellationToken));
    }

    private static async Task<IResult> NotTastingAsync(PauseForm? form, PauseTasting act, CancellationToken cancellationToken)
    {
        await act.DoAsync(form?.Paused ?? true, cancellationToken);
        return Results.NoContent();
    }

    private static async Task<IResult> StageAsync(
        StageForm form, [FromHeader(Name = RepeatKey)] Guid? key, ClaimsPrincipal person, ChangeStage act, CancellationToken cancellationToken)
    {
        var reader = new FieldReader();
        JarStage stage = Choice<JarStage>(reader, "what", form.What);
        Destination went = reader.ReadChoice("went", form.Went, default(Destination));
        return reader.Refusals.Count > 0 ? RefusalProblem.Of(reader.Refusals)
            : Taken(await act.DoAsync(form.Jar, new WhereItGoes(stage, went == default ? null : went, form.GivenTo), form.Note, null,
                Mark(key, person), cancellationToken));
    }

    private static T Choice<T>(FieldReader reader, string field, string? typed) where T : struct, Enum
    {
        if (string.IsNullOrWhiteSpace(typed))
            reader.Refuse(field, typed, $"one of {string.Join(", ", Enum.GetNames<T>())} would be right");
        return reader.ReadChoice(field, typed, default(T));
    }

    private static EntryMark Mark(Guid? key, ClaimsPrincipal person) => person.Mark(key ?? Guid.CreateVersion7());

    private static IResult Taken(AnswerOutcome outcome) => outcome.Asked is { } asked ? RefusalProblem.KeyUsed(asked)
        : outcome.Refusals.Count > 0
        ? RefusalProblem.Of(outcome.Refusals)
        : Results.Ok(new AnswerTaken(outcome.Observations.Count, outcome.Known));
}
