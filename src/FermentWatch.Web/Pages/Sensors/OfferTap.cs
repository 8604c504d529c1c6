using FermentWatch.Acts.Sensors;
using FermentWatch.Web.Gates;
using Microsoft.AspNetCore.Mvc;

namespace FermentWatch.Web.Pages.Sensors;

/// <summary>
/// What a tap on an offer comes to. It has an address of its own: offers come and go with what is heard, and a form that a page
/// no longer shows could not be handed in there.
/// </summary>
internal static class OfferTap
{
    /// <summary>Where the buttons of an offer lead.</summary>
    public const string Path = "/sensors/take";

    public static void MapOfferTap(this WebApplication app) => app.MapPost(Path, TakeAsync).Does<TakeOffer>().ExcludeFromDescription();

    private static async Task<IResult> TakeAsync([FromForm] OfferTapForm form, TakeOffer desk, CancellationToken cancellationToken)
    {
        var taken = new OfferForm { Topic = form.Topic, ValuePointer = form.ValuePointer, Unit = form.Unit, Where = form.Where };
        var (sensor, _) = await desk.TakeAsync(taken, cancellationToken);
        return Results.Redirect(sensor is null ? "~/sensors?gone=1" : $"~/sensors#sensor-{sensor.Slug}");
    }
}

/// <summary>The form of an offer as the browser sends it; the button that was tapped says where.</summary>
public sealed class OfferTapForm
{
    public string? Topic { get; set; }

    public string? ValuePointer { get; set; }

    public string? Unit { get; set; }

    public string? Where { get; set; }
}
