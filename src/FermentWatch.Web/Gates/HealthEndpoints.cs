using FermentWatch.Kitchen.Health;

namespace FermentWatch.Web.Gates;

/// <summary>
/// The signs of life for machines. To strangers they say which loop stands still, not why: reasons and records are for the household.
/// </summary>
internal static class HealthEndpoints
{
    public static void MapHealth(this WebApplication app)
    {
        app.MapGet("/healthz/live", (IHealth health) => Answer(health.Read(), report => report.IsLive))
            .AllowAnonymous().ExcludeFromDescription();
        app.MapGet("/healthz/ready", (IHealth health) => Answer(health.Read(), report => report.IsReady))
            .AllowAnonymous().ExcludeFromDescription();
    }

    private static IResult Answer(HealthReport report, Func<HealthReport, bool> isWell) => Results.Json(
        new
        {
            live = report.IsLive,
            ready = report.IsReady,
            loops = report.Loops.Select(loop => new
            {
                loop.Name,
                state = loop.IsDead ? "dead" : loop.Trouble is not null ? "failing" : loop.LastPass is null ? "starting" : "well",
                lastPass = loop.LastPass?.ToString(),
            }),
            setAside = report.SetAside.Count,
            diskFull = report.DiskIsFull,
        },
        statusCode: isWell(report) ? StatusCodes.Status200OK : StatusCodes.Status503ServiceUnavailable);
}
