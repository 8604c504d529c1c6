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
        jars.MapPost("/{number:int}/ph", MeasureAsync).WithSummary("Enters a pH.").Produces<ObservationAnswer>(201).ProducesValidationProblem(422).ProducesProblem(404);
        jars.MapPost("/{number:int}/place", MoveAsync).WithSummary("Says that a jar stands somewhere else.").Produces(204).ProducesValidationProblem(422).ProducesProblem(404);
        jars.MapPost("/{number:int}/observations/{id:guid}/take-back", TakeBackAsync).WithSummary("Takes back what was entered.").Produces(204).ProducesProblem(404);
    }

    private static async Task<IResult> KeptAsync(JarReader reader, CancellationToken cancellationToken) =>
        Results.Ok((await reader.KeptAsync(cancellationToken)).Select(JarAnswer.Of));

    private static async Task<IResult> FindAsync(int number, JarReader reader, CancellationToken cancellationToken) =>
        await reader.FindAsync(number, cancellationToken) is { } view ? Results.Ok(JarAnswer.Of(view)) : NoJar(number);

    private static async Task<IResult> ForecastAsync(int number, JarReader reader, CancellationToken cancellationToken) =>
        await reader.FindAsync(number, cancellationToken) is { } view && ForecastAnswer.Of(view) is { } forecast
            ? Results.Ok(forecast) : RefusalProblem.NotThere($"forecast of jar {number}");

    private static async Task<IResult> PutUpAsync(
        PutUpForm form, [FromHeader(Name = RepeatKey)] Guid? key, JarDesk desk, JarReader reader, OncePerForm<PutUpOrder> once, CancellationToken cancellationToken)
    {
        Guid id = key ?? Guid.CreateVersion7();
        PutUpOrder order = await once.DoAsync(id, () => desk.PutUpAsync(form, CancellationToken.None));
        if (order.Refusals.Count > 0)
        {
            once.Forget(id);
            return RefusalProblem.Of(order.Refusals);
        }
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
        return entry.Measurement is { } measurement
            ? Results.Created($"/api/v1/jars/{number}", ObservationAnswer.Of(measurement))
            : RefusalProblem.Of(entry.Refusals);
    }

    private static async Task<IResult> MoveAsync(int number, MoveForm form, [FromHeader(Name = RepeatKey)] Guid? key, IJarBook jars, JarDesk desk, CancellationToken cancellationToken)
    {
        if (await jars.FindAsync(number, cancellationToken) is not { } jar)
            return NoJar(number);
        var refusals = await desk.MoveAsync(jar, form, key ?? Guid.CreateVersion7(), cancellationToken);
        return refusals.Count > 0 ? RefusalProblem.Of(refusals) : Results.NoContent();
    }

    private static async Task<IResult> TakeBackAsync(int number, Guid id, ClaimsPrincipal person, IJarBook jars, JarDesk desk, CancellationToken cancellationToken)
    {
        if (await jars.FindAsync(number, cancellationToken) is not { } jar)
            return NoJar(number);
        if (!jar.Observations.Exists(each => each.Id == id))
            return RefusalProblem.NotThere($"observation {id} of jar {number}");
        await desk.TakeBackAsync(jar, id, person.Identity!.Name!, cancellationToken);
        return Results.NoContent();
    }

    private static IResult NoJar(int number) => RefusalProblem.NotThere($"jar {number}");
}
