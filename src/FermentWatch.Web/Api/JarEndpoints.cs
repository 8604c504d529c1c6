using System.Security.Claims;
using FermentWatch.Acts.Jars;
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
        jars.MapGet("/{number:int}/what-if", WhatIfAsync)
            .WithSummary("What would become of a jar moved today, chilled on a day, or asked for by one: expected, never measured.")
            .Produces<WhatIfAnswer>().ProducesValidationProblem(422).ProducesProblem(404);
        api.MapGet("/salt", SaltAsync).WithTags("jars").WithSummary("Salt for one jar by weight, from what would be typed to put it up.")
            .Produces<SaltWeighedAnswer>().ProducesValidationProblem(422);
        api.MapGet("/salt/brine", BrineAsync).WithTags("jars")
            .WithSummary("Salt of a brine of salt and water from what a hydrometer shows in it, or what it should show.")
            .Produces<BrineAnswer>().ProducesValidationProblem(422);
        jars.MapGet("/{number:int}/salt", MendAsync)
            .WithSummary("How much salt a jar that was salted wrongly needs, or how much is to be taken out. Arithmetic of salt and nothing else.")
            .Produces<SaltMendAnswer>().ProducesValidationProblem(422).ProducesProblem(404);
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
        jars.MapPost("/{number:int}/portions", TakeAsync).Does<TakePortion>()
            .WithSummary("Says what was taken out of a jar: a share of the full jar, a volume or a weight.")
            .Produces<ObservationAnswer>(201).ProducesValidationProblem(422).ProducesProblem(404);
        jars.MapPost("/{number:int}/opened", OpenAsync).Does<OpenJar>()
            .WithSummary("Says that a jar is open, where nothing was taken out; of one that is open already nothing is written down.")
            .Produces<AnswerTaken>().ProducesValidationProblem(422).ProducesProblem(404);
        jars.MapGet("/{number:int}/tag", TagAsync).WithSummary("What goes with a jar that is given away, in words.")
            .Produces<TagAnswer>().ProducesProblem(404);
        api.MapGet("/cold", ColdAsync).WithTags("jars")
            .WithSummary("What is in the cold, in the order in which it is eaten, and until when it lasts.")
            .Produces<ColdStoreAnswer>();
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

    private static async Task<IResult> BrineAsync([AsParameters] BrineQuery query, AskBrine question, CancellationToken cancellationToken) =>
        await question.ForAsync(query.ToForm(), cancellationToken) switch
        {
            { Brine: { } brine } => Results.Ok(BrineAnswer.Of(brine)),
            var (_, refusals) => RefusalProblem.Of(refusals),
        };

    private static async Task<IResult> MendAsync(int number, [AsParameters] MendQuery query, AskSaltMend question,
        CancellationToken cancellationToken) => await question.ForAsync(number, query.ToForm(), cancellationToken) switch
        {
            null => NoJar(number),
            { Mend: { } mend } answered => Results.Ok(SaltMendAnswer.Of(mend, answered)),
            { Refusals: { Count: > 0 } refusals } => RefusalProblem.Of(refusals),
            _ => RefusalProblem.Of([new Kinetics.Refusal("happened", "nothing", "TooLittle, TooMuch, TastesTooSalty or Forgotten would be right")]),
        };

    private static async Task<IResult> KeptAsync(JarReader reader, CancellationToken cancellationToken) =>
        Results.Ok((await reader.KeptAsync(cancellationToken)).Select(JarAnswer.Of));

    private static async Task<IResult> PastAsync(JarReader reader, CancellationToken cancellationToken) =>
        Results.Ok((await reader.PastAsync(cancellationToken)).Select(JarAnswer.Of));

    private static async Task<IResult> FindAsync(int number, JarReader reader, CancellationToken cancellationToken) =>
        await reader.FindAsync(number, cancellationToken) is { } view ? Results.Ok(JarAnswer.Of(view)) : NoJar(number);

    private static async Task<IResult> ForecastAsync(int number, JarReader reader, CancellationToken cancellationToken) =>
        await reader.FindAsync(number, cancellationToken) is { } view && ForecastAnswer.Of(view) is { } forecast
            ? Results.Ok(forecast) : RefusalProblem.NotThere($"forecast of jar {number}");

    private static async Task<IResult> WhatIfAsync(
        int number, [FromQuery(Name = "chill")] string? chill, [FromQuery(Name = "ready")] string? ready, AskWhatIf question,
        CancellationToken cancellationToken) => await question.ForAsync(number, chill, ready, cancellationToken) switch
        {
            null => NoJar(number),
            { Refusals: { Count: > 0 } refusals } => RefusalProblem.Of(refusals),
            { Moved: [] } => RefusalProblem.NotThere($"forecast of jar {number}"),
            var answered => Results.Ok(WhatIfAnswer.Of(answered)),
        };

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

    private static async Task<IResult> TakeAsync(
        int number, PortionForm form, [FromHeader(Name = RepeatKey)] Guid? key, ClaimsPrincipal person, JarReader jars, TakePortion act,
            CancellationToken cancellationToken)
    {
        if (await jars.RecordAsync(number, cancellationToken) is not { } jar)
            return NoJar(number);
        PortionEntry entry = await act.DoAsync(jar, form, person.Mark(key ?? Guid.CreateVersion7()), cancellationToken);
        if (entry.Asked is { } asked)
            return RefusalProblem.KeyUsed(asked);
        return entry.Portion is { } portion
            ? Results.Created($"/api/v1/jars/{number}", ObservationAnswer.Of(jar, portion)) : RefusalProblem.Of(entry.Refusals);
    }

    private static async Task<IResult> OpenAsync(
        int number, OpenedForm? form, [FromHeader(Name = RepeatKey)] Guid? key, ClaimsPrincipal person, JarReader jars, OpenJar act,
            CancellationToken cancellationToken)
    {
        if (await jars.RecordAsync(number, cancellationToken) is not { } jar)
            return NoJar(number);
        var outcome = await act.DoAsync(jar, form ?? new OpenedForm(), person.Mark(key ?? Guid.CreateVersion7()), cancellationToken);
        return outcome.Asked is { } asked ? RefusalProblem.KeyUsed(asked)
            : outcome.Refusals.Count > 0 ? RefusalProblem.Of(outcome.Refusals)
            : Results.Ok(new AnswerTaken(outcome.Observations.Count, outcome.Known));
    }

    private static async Task<IResult> TagAsync(int number, JarReader reader, CancellationToken cancellationToken) =>
        await reader.FindAsync(number, cancellationToken) is { } view ? Results.Ok(TagAnswer.Of(view)) : NoJar(number);

    private static async Task<IResult> ColdAsync(ColdStoreReader reader, CancellationToken cancellationToken) =>
        Results.Ok(ColdStoreAnswer.Of(await reader.NowAsync(cancellationToken)));

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
