using System.Security.Claims;
using System.Security.Cryptography;
using System.Text;
using FermentWatch.Acts.Notices;
using FermentWatch.Kitchen.Calendar;
using FermentWatch.Web.Api.Answers;
using FermentWatch.Web.Gates;
using Microsoft.Net.Http.Headers;

namespace FermentWatch.Web.Api;

/// <summary>Calendars by their secret addresses, and the addresses.</summary>
internal static class CalendarEndpoints
{
    public static void MapCalendar(this WebApplication app) =>
        app.MapGet("/calendar/{secret}.ics", FileAsync).AllowAnonymous().ExcludeFromDescription();

    public static void MapCalendarAddress(this RouteGroupBuilder api)
    {
        RouteGroupBuilder calendar = api.MapGroup("/calendar").WithTags("notices");
        calendar.MapGet("", AddressAsync).WithSummary("The secret address of your calendar.").Produces<CalendarAddressAnswer>().ProducesProblem(404);
        calendar.MapPost("", RenewAsync).Does<CalendarAddress>().WithSummary("Makes a new address; the one before stops at once.")
            .Produces<CalendarAddressAnswer>();
    }

    private static async Task<IResult> FileAsync(
        string secret, HttpContext context, CalendarAddress desk, ICalendarFile calendar, WebOptions web, CancellationToken cancellationToken)
    {
        if (await desk.DaysAsync(secret, cancellationToken) is not { } days)
            return Results.Text("No calendar has this address. The notices page of the kitchen shows the right one.",
                statusCode: StatusCodes.Status404NotFound);
        byte[] file = Encoding.UTF8.GetBytes(calendar.Of(days, web.PublicRoot()));
        context.Response.Headers.CacheControl = "private, max-age=0, must-revalidate";
        return Results.Bytes(file, calendar.MediaType,
            entityTag: new EntityTagHeaderValue($"\"{Convert.ToHexStringLower(SHA256.HashData(file))[..32]}\""));
    }

    private static async Task<IResult> AddressAsync(ClaimsPrincipal person, CalendarAddress desk, WebOptions web,
        CancellationToken cancellationToken) =>
        await desk.PathAsync(person.Identity!.Name!, cancellationToken) is { } path ? Results.Ok(new CalendarAddressAnswer($"{web.SubPath}/{path}"))
            : RefusalProblem.NotThere("calendar of yours yet");

    private static async Task<IResult> RenewAsync(ClaimsPrincipal person, CalendarAddress desk, WebOptions web,
        CancellationToken cancellationToken) =>
        Results.Ok(new CalendarAddressAnswer($"{web.SubPath}/{await desk.RenewAsync(person.Identity!.Name!, cancellationToken)}"));
}
