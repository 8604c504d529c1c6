using System.Security.Claims;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Service.Api.Answers;
using FermentWatch.Service.Pages.Entering;
using FermentWatch.Service.Pages.Jars;
using Microsoft.AspNetCore.Mvc;

namespace FermentWatch.Service.Api;

/// <summary>Jars: read, put up, measure, move, take back.</summary>
internal static class JarEndpoints
{
    private const string RepeatKey = "Idempotency-Key";

    public static void MapJars(this RouteGroupBuilder api)
    {
        RouteGroupBuilder jars = api.MapGroup("/jars").WithTags("jars");
        jars.MapGet("/", KeptAsync).WithSummary("Every kept jar.").Produces<JarAnswer[]>();
        jars.MapPost("/", PutUpAsync).WithSummary("Puts up one or several jars.").Produces<JarAnswer[]>(StatusCodes.Status201Created).ProducesValidationProblem(422);
        jars.MapGet("/{number:int}", FindAsync).WithSummary("One jar.").Produces<JarAnswer>().ProducesProblem(404);
        jars.MapGet("/{number:int}/forecast", ForecastAsync).WithSummary("The latest forecast of a jar.").Produces<ForecastAnswer>().ProducesProblem(404);
        jars.MapGet("/past", PastAsync).WithSummary("Jars that are finished or thrown out, the last first.").Produces<JarAnswer[]>();
        jars.MapPut("/{number:int}", CorrectAsync).WithSummary("Puts the record of a jar right; fields left out stay. What stood before is kept.")
            .Produces<JarAnswer>().ProducesValidationProblem(422).ProducesProblem(404);
        jars.MapPost("/{number:int}/ph", MeasureAsync).WithSummary("Enters a pH.").Produces<ObservationAnswer>(201).ProducesValidationProblem(422).ProducesProblem(404);
        jars.MapPost("/{number:int}/titration", TitrateAsync).WithSummary("Enters a titration: per cent lactic, or the base used for how much brine.")
            .Produces<ObservationAnswer>(201).ProducesValidationProblem(422).ProducesProblem(404);
        jars.MapPost("/{number:int}/place", MoveAsync).WithSummary("Says that a jar stands somewhere else.").Produces(204).ProducesValidationProblem(422).ProducesProblem(404);
        jars.MapPost("/{number:int}/observations/{id:guid}/take-back", TakeBackAsync).WithSummary("Takes back what was entered.").Produces(204).ProducesProblem(404);
    }

    private static async Task<IResult> KeptAsync(JarReader reader, CancellationToken cancellationToken) =>
        Results.Ok((await reader.KeptAsync(cancellationToken)).Select(JarAnswer.Of));

    private static async Task<IResult> PastAsync(JarReader reader, CancellationToken cancellationToken) =>
        Results.Ok((await reader.PastAsync(cancellationToken)).Select(JarAnswer.Of));

    private static async Task<IResult> FindAsync(int number, JarReader reader, CancellationToken cancellationToken) =>
        await reader.FindAsync(number, cancellationToken) is { } view ? Results.Ok(JarAnswer.Of(view)) : NoJar(number);

    private static async Task<IResult> ForecastAsync(int number, JarReader reader, CancellationToken cancellationToken) =>
        await reader.FindAsync(number, cancellationToken) is { } view && ForecastAnswer.Of(view) is { } forecast
            ? Results.Ok(forecast) : RefusalProblem.NotThere($"forecast of jar {number}");

    private static async Task<IResult> PutUpAsync(
        PutUpForm form, [FromHeader(Name = RepeatKey)] Guid? key, JarDesk desk, JarReader reader, OncePerForm<PutUpOrder> once, CancellationToken cancellationToken)
    {
        Guid id = key ?? Guid.CreateVersion7();
        string content = (form with { ItIsRight = false }).ToString();
        (PutUpOrder order, bool saidSomethingElse) = await once.DoAsync(id, content, () => desk.PutUpAsync(form, CancellationToken.None));
        if (order.Jars.Count == 0)
            once.Forget(id);
        if (saidSomethingElse)
            return RefusalProblem.KeyUsed("A changed put-up needs a key of its own; a jar is put right by PUT /jars/{number}.");
        if (order.Jars.Count == 0)
            return RefusalProblem.Of(order.Refusals, order.Doubts);
        var numbers = order.Jars.Select(jar => jar.Number).ToHashSet();
        var views = (await reader.KeptAsync(cancellationToken)).Where(view => numbers.Contains(view.Jar.Number));
        return Results.Created($"/api/v1/jars/{order.Jars[0].Number}", views.Select(JarAnswer.Of));
    }

    private static async Task<IResult> MeasureAsync(
        int number, PhForm form, [FromHeader(Name = RepeatKey)] Guid? key, [FromQuery(Name = "corrects")] Guid? corrects,
        ClaimsPrincipal person, IJarBook jars, JarDesk desk, CancellationToken cancellationToken)
    {
        if (await jars.FindAsync(number, cancellationToken) is not { } jar)
            return NoJar(number);
        if (corrects is { } wrong && !jar.Observations.Exists(each => each.Id == wrong))
            return RefusalProblem.NotThere($"observation {wrong} of jar {number}");
        var mark = EntryMark.Of(key ?? Guid.CreateVersion7(), person);
        PhEntry entry = await desk.MeasureAsync(jar, form, mark, corrects, cancellationToken);
        if (entry.Asked is { } asked)
            return RefusalProblem.KeyUsed(asked);
        return entry.Measurement is { } measurement
            ? Results.Created($"/api/v1/jars/{number}", ObservationAnswer.Of(jar, measurement))
            : RefusalProblem.Of(entry.Refusals);
    }

    private static async Task<IResult> TitrateAsync(
        int number, TitrationForm form, [FromHeader(Name = RepeatKey)] Guid? key, ClaimsPrincipal person, IJarBook jars, JarDesk desk, CancellationToken cancellationToken)
    {
        if (await jars.FindAsync(number, cancellationToken) is not { } jar)
            return NoJar(number);
        TitrationEntry entry = await desk.TitrateAsync(jar, form, EntryMark.Of(key ?? Guid.CreateVersion7(), person), cancellationToken);
        if (entry.Asked is { } asked)
            return RefusalProblem.KeyUsed(asked);
        return entry.Titration is { } titration
            ? Results.Created($"/api/v1/jars/{number}", ObservationAnswer.Of(jar, titration)) : RefusalProblem.Of(entry.Refusals);
    }

    private static async Task<IResult> CorrectAsync(
        int number, CorrectionForm form, ClaimsPrincipal person, IJarBook jars, JarDesk desk, JarReader reader, CancellationToken cancellationToken)
    {
        if (await jars.FindAsync(number, cancellationToken) is not { } jar)
            return NoJar(number);
        CorrectionOrder order = await desk.CorrectAsync(jar, form, EntryMark.Of(Guid.CreateVersion7(), person), cancellationToken);
        return order.Corrected is null ? RefusalProblem.Of(order.Refusals, order.Doubts)
            : Results.Ok(JarAnswer.Of((await reader.FindAsync(number, cancellationToken))!));
    }

    private static async Task<IResult> MoveAsync(
        int number, MoveForm form, [FromHeader(Name = RepeatKey)] Guid? key, ClaimsPrincipal person, IJarBook jars, JarDesk desk, CancellationToken cancellationToken)
    {
        if (await jars.FindAsync(number, cancellationToken) is not { } jar)
            return NoJar(number);
        var outcome = await desk.MoveAsync(jar, form, EntryMark.Of(key ?? Guid.CreateVersion7(), person), cancellationToken);
        return outcome.Asked is { } asked ? RefusalProblem.KeyUsed(asked)
            : outcome.Refusals.Count > 0 ? RefusalProblem.Of(outcome.Refusals) : Results.NoContent();
    }

    private static async Task<IResult> TakeBackAsync(int number, Guid id, ClaimsPrincipal person, IJarBook jars, JarDesk desk, CancellationToken cancellationToken)
    {
        if (await jars.FindAsync(number, cancellationToken) is not { } jar)
            return NoJar(number);
        if (!jar.Observations.Exists(each => each.Id == id))
            return RefusalProblem.NotThere($"observation {id} of jar {number}");
        return await desk.TakeBackAsync(jar, id, EntryMark.Of(id, person), cancellationToken) is { } refusal ? RefusalProblem.Of([refusal]) : Results.NoContent();
    }

    private static IResult NoJar(int number) => RefusalProblem.NotThere($"jar {number}");
}
