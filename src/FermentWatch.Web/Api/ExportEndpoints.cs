using FermentWatch.Acts.Households;
using FermentWatch.Web.Gates;
using Microsoft.AspNetCore.Mvc;

namespace FermentWatch.Web.Api;

/// <summary>
/// The household as a file. Posts, though nothing is written: what a post asks for is for adults where no act says otherwise, comes from our own
/// pages only, and takes no page's place for the minutes that it lasts.
/// </summary>
internal static class ExportEndpoints
{
    private const string Zip = "application/zip";

    public static void MapExport(this RouteGroupBuilder api) =>
        api.MapPost("/export", (bool? readings, ExportHousehold act) => Handed(act, readings ?? false)).Does<ExportHousehold>().WithTags("household")
            .WithSummary("The household as a zip: records as JSON and CSV, photos, with readings=true all readings. No password or key is in it.")
            .Produces(StatusCodes.Status200OK, contentType: Zip).ProducesProblem(403);

    /// <summary>The same for the form of the page.</summary>
    public static void MapExportForm(this IEndpointRouteBuilder app) =>
        app.MapPost("/household/export", ([FromForm] string? readings, ExportHousehold act) => Handed(act, readings is not null))
            .Does<ExportHousehold>().ExcludeFromDescription();

    private static Download Handed(ExportHousehold act, bool withReadings) => new Download(act, withReadings);

    /// <summary>A file that is made while it is sent. Where that fails the connection breaks off, so that a browser does not
    /// take it for whole.</summary>
    private sealed class Download(ExportHousehold act, bool withReadings) : IResult
    {
        public async Task ExecuteAsync(HttpContext context)
        {
            context.Response.ContentType = Zip;
            context.Response.Headers.ContentDisposition = $"attachment; filename=\"{act.FileName}\"";
            context.Response.Headers.CacheControl = "no-store";
            // A zip is written without waiting; this stream lets it, a part at a time.
            await using Stream body = context.Response.BodyWriter.AsStream(leaveOpen: true);
            await act.DoAsync(body, withReadings, context.RequestAborted);
        }
    }
}
