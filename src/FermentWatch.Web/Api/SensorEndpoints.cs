using System.Security.Claims;
using FermentWatch.Acts.Sensors;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Web.Accounts;
using FermentWatch.Web.Api.Answers;
using FermentWatch.Web.Gates;

namespace FermentWatch.Web.Api;

/// <summary>Sensors, and what could not be used.</summary>
internal static class SensorEndpoints
{
    public static void MapSensors(this RouteGroupBuilder api)
    {
        RouteGroupBuilder sensors = api.MapGroup("").WithTags("sensors");
        sensors.MapGet("/sensors", InServiceAsync).WithSummary("Every sensor in service.").Produces<SensorAnswer[]>();
        sensors.MapPost("/sensors/{slug}/place",
            GiveAsync).Does<GiveSensor>().WithSummary("Gives a sensor to a place or a jar.").Produces(204).ProducesValidationProblem(422)
                .ProducesProblem(404);
        sensors.MapGet("/sensors/{slug}/calibrations",
            CalibrationsAsync).WithSummary("The checks of a probe in buffers, the last first.").Produces<CalibrationAnswer[]>().ProducesProblem(404);
        sensors.MapPost("/sensors/{slug}/calibrations",
            CalibrateAsync).Does<CheckProbe>().WithSummary("Files a check of a probe in buffers.").Produces<CalibrationAnswer>(201)
                .ProducesValidationProblem(422).ProducesProblem(404);
        sensors.MapDelete("/sensors/{slug}/calibrations/{id:guid}",
            TakeBackAsync).Does<CheckProbe>().WithSummary("Takes a check of a probe back; it is kept, and counts no more.").Produces(204)
                .ProducesProblem(404);
        sensors.MapGet("/rejects", RejectsAsync).WithSummary("What came in and could not be used.").Produces<RejectAnswer[]>();
    }

    private static async Task<IResult> InServiceAsync(SensorReader reader, CancellationToken cancellationToken) =>
        Results.Ok((await reader.InServiceAsync(cancellationToken)).Select(SensorAnswer.Of));

    private static async Task<IResult> RejectsAsync(SensorReader reader, CancellationToken cancellationToken) =>
        Results.Ok((await reader.RejectsAsync(cancellationToken)).Select(RejectAnswer.Of));

    private static async Task<IResult> GiveAsync(string slug, GiveSensorForm form, SensorReader sensors, GiveSensor desk,
        CancellationToken cancellationToken)
    {
        if (await sensors.FindAsync(slug, cancellationToken) is not { } sensor)
            return RefusalProblem.NotThere($"sensor {slug}");
        var refusals = await desk.GiveAsync(sensor, form.Where, cancellationToken);
        return refusals.Count > 0 ? RefusalProblem.Of(refusals) : Results.NoContent();
    }

    private static async Task<IResult> CalibrationsAsync(string slug, SensorReader sensors, CheckProbe desk, CancellationToken cancellationToken) =>
        await sensors.FindAsync(slug, cancellationToken) is { } sensor
            ? Results.Ok((await desk.OfAsync(sensor, cancellationToken)).Select(CalibrationAnswer.Of))
            : RefusalProblem.NotThere($"sensor {slug}");

    private static async Task<IResult> CalibrateAsync(
        string slug, CalibrationForm form, SensorReader sensors, CheckProbe desk, HttpContext context, TimeProvider clock,
            CancellationToken cancellationToken)
    {
        if (await sensors.FindAsync(slug, cancellationToken) is not { } sensor)
            return RefusalProblem.NotThere($"sensor {slug}");
        CalibrationEntry entry = await desk.EnterAsync(sensor, form, context.User.Mark(Guid.CreateVersion7(clock.GetUtcNow())), cancellationToken);
        return entry.Check is { } check ? Results.Created($"/api/v1/sensors/{slug}/calibrations", CalibrationAnswer.Of(check))
            : RefusalProblem.Of(entry.Refusals);
    }

    private static async Task<IResult> TakeBackAsync(
        string slug, Guid id, SensorReader sensors, CheckProbe desk, ClaimsPrincipal person, CancellationToken cancellationToken) =>
        await sensors.FindAsync(slug, cancellationToken) is { } sensor
            && await desk.TakeBackAsync(sensor, id, person.Identity!.Name!, cancellationToken)
            ? Results.NoContent()
            : RefusalProblem.NotThere($"calibration {id} of sensor {slug}");
}
