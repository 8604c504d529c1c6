using System.Security.Claims;
using FermentWatch.Acts;
using FermentWatch.Acts.Jars;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Web.Accounts;
using FermentWatch.Web.Api.Answers;
using FermentWatch.Web.Gates;
using Microsoft.AspNetCore.Mvc;

namespace FermentWatch.Web.Api;

/// <summary>Jars: read, put up, measure, move, take back.</summary>
internal static class JarEndpoints
{
    private const string RepeatKey = "Idempotency-Key";

    public static void MapJars(this RouteGroupBuilder api)
    {
        RouteGroupBuilder jars = api.MapGroup("/jars").WithTags("jars");
        jars.MapGet("/", KeptAsync).WithSummary("Every kept jar.").Produces<JarAnswer[]>();
        jars.MapPost("/", PutUpAsync).Does<PutUpJars>()
            .WithSummary("Puts up one or several jars.").Produces<JarAnswer[]>(StatusCodes.Status201Created).ProducesValidationProblem(422);
        jars.MapGet("/{number:int}", FindAsync).WithSummary("One jar.").Produces<JarAnswer>().ProducesProblem(404);
        jars.MapGet("/{number:int}/forecast",
            ForecastAsync).WithSummary("The latest forecast of a jar.").Produces<ForecastAnswer>().ProducesProblem(404);
        api.MapGet("/salt", SaltAsync).WithTags("jars").WithSummary("Salt for one jar by weight, from what would be typed to put it up.")
            .Produces<SaltWeighedAnswer>().ProducesValidationProblem(422);
        jars.MapGet("/past", PastAsync).WithSummary("Jars that are finished or thrown out, the last first.").Produces<JarAnswer[]>();
        jars.MapPut("/{number:int}", CorrectAsync).Does<CorrectJar>()
            .WithSummary("Puts the record of a jar right; fields left out stay. What stood before is kept.")
            .Produces<JarAnswer>().ProducesValidationProblem(422).ProducesProblem(404);
        jars.MapPost("/{number:int}/ph",
            MeasureAsync).Does<MeasurePh>().WithSummary("Enters a pH.").Produces<ObservationAnswer>(201).ProducesValidationProblem(422)
                .ProducesProblem(404);
        jars.MapPost("/{number:int}/titration",
            TitrateAsync).Does<TitrateBrine>().WithSummary("Enters a titration: per cent lactic, or the base used for how much brine.")
            .Produces<ObservationAnswer>(201).ProducesValidationProblem(422).ProducesProblem(404);
        jars.MapPost("/{number:int}/place",
            MoveAsync).Does<MoveJar>().WithSummary("Says that a jar stands somewhere else.").Produces(204).ProducesValidationProblem(422)
                .ProducesProblem(404);
        jars.MapPost("/{number:int}/observations/{id:guid}/take-back",
            TakeBackAsync).Does<TakeBackEntry>().WithSummary("Takes back what was entered.").Produces(204).ProducesProblem(404);
    }

    private static async Task<IResult> SaltAsync([AsParameters] SaltQuery query, WeighSalt act, CancellationToken cancellationToken)
    {
        (SaltToWeigh? salt, IReadOnlyList<Kinetics.Refusal> refusals) = await act.ForAsync(query.ToForm(), cancellationToken);
        return refusals.Count > 0 ? RefusalProblem.Of(refusals)
            : Results.Ok(new SaltWeighedAnswer { Grams = salt?.Grams, Percent = salt?.Percent, Words = salt?.Words
                ?? "by taste", Spoons = salt?.Spoons });
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
        PutUpForm form, [FromHeader(Name = RepeatKey)] Guid? key, ClaimsPrincipal person, PutUpJars act, JarReader reader,
            CancellationToken cancellationToken)
    {
        PutUpAnswer order = await act.DoAsync(form, person.Mark(key ?? Guid.CreateVersion7()), cancellationToken);
        if (order.Asked is not null)
            return RefusalProblem.KeyUsed("A changed put-up needs a key of its own; a jar is put right by PUT /jars/{number}.");
        if (order.Jars.Count == 0)
            return RefusalProblem.Of(order.Refusals, order.Doubts);
        var numbers = order.Jars.Select(jar => jar.Number).ToHashSet();
        var views = (await reader.KeptAsync(cancellationToken)).Where(view => numbers.Contains(view.Jar.Number));
        return Results.Created($"/api/v1/jars/{order.Jars[0].Number}", views.Select(JarAnswer.Of));
    }

    private static async Task<IResult> MeasureAsync(
        int number, PhForm form, [FromHeader(Name = RepeatKey)] Guid? key, [FromQuery(Name = "corrects")] Guid? corrects,
        ClaimsPrincipal person, JarReader jars, MeasurePh act, CancellationToken cancellationToken)
    {
        if (await jars.RecordAsync(number, cancellationToken) is not { } jar)
            return NoJar(number);
        if (corrects is { } wrong && !jar.Observations.Exists(each => each.Id == wrong))
            return RefusalProblem.NotThere($"observation {wrong} of jar {number}");
        var mark = person.Mark(key ?? Guid.CreateVersion7());
        PhEntry entry = await act.DoAsync(jar, form, mark, corrects, cancellationToken);
        if (entry.Asked is { } asked)
            return RefusalProblem.KeyUsed(asked);
        return entry.Measurement is { } measurement
            ? Results.Created($"/api/v1/jars/{number}", ObservationAnswer.Of(jar, measurement))
            : RefusalProblem.Of(entry.Refusals);
    }

    private static async Task<IResult> TitrateAsync(
        int number, TitrationForm form, [FromHeader(Name = RepeatKey)] Guid? key, ClaimsPrincipal person, JarReader jars, TitrateBrine act,
            CancellationToken cancellationToken)
    {
        if (await jars.RecordAsync(number, cancellationToken) is not { } jar)
            return NoJar(number);
        TitrationEntry entry = await act.DoAsync(jar, form, person.Mark(key ?? Guid.CreateVersion7()), cancellationToken);
        if (entry.Asked is { } asked)
            return RefusalProblem.KeyUsed(asked);
        return entry.Titration is { } titration
            ? Results.Created($"/api/v1/jars/{number}", ObservationAnswer.Of(jar, titration)) : RefusalProblem.Of(entry.Refusals);
    }

    private static async Task<IResult> CorrectAsync(
        int number, CorrectionForm form, ClaimsPrincipal person, JarReader jars, CorrectJar act,
            CancellationToken cancellationToken)
    {
        if (await jars.RecordAsync(number, cancellationToken) is not { } jar)
            return NoJar(number);
        CorrectionOrder order = await act.DoAsync(jar, form, person.Mark(Guid.CreateVersion7()), cancellationToken);
        return order.Corrected is null ? RefusalProblem.Of(order.Refusals, order.Doubts)
            : Results.Ok(JarAnswer.Of((await jars.FindAsync(number, cancellationToken))!));
    }

    private static async Task<IResult> MoveAsync(
        int number, MoveForm form, [FromHeader(Name = RepeatKey)] Guid? key, ClaimsPrincipal person, JarReader jars, MoveJar act,
            CancellationToken cancellationToken)
    {
        if (await jars.RecordAsync(number, cancellationToken) is not { } jar)
            return NoJar(number);
        var outcome = await act.DoAsync(jar, form, person.Mark(key ?? Guid.CreateVersion7()), cancellationToken);
        return outcome.Asked is { } asked ? RefusalProblem.KeyUsed(asked)
            : outcome.Refusals.Count > 0 ? RefusalProblem.Of(outcome.Refusals) : Results.NoContent();
    }

    private static async Task<IResult> TakeBackAsync(int number, Guid id, ClaimsPrincipal person, JarReader jars, TakeBackEntry act,
        CancellationToken cancellationToken)
    {
        if (await jars.RecordAsync(number, cancellationToken) is not { } jar)
            return NoJar(number);
        if (!jar.Observations.Exists(each => each.Id == id))
            return RefusalProblem.NotThere($"observation {id} of jar {number}");
        return await act.DoAsync(jar, id, person.Mark(id), cancellationToken) is { } refusal ? RefusalProblem.Of([refusal]) : Results.NoContent();
    }

    private static IResult NoJar(int number) => RefusalProblem.NotThere($"jar {number}");
}
