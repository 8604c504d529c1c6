using Microsoft.AspNetCore.Mvc;

namespace FermentWatch.Service.Pages.Sensors;

/// <summary>Takes an offer: this topic is a sensor, and it measures this.</summary>
public sealed record OfferForm
{
    /// <summary>The topic that was offered.</summary>
    public string? Topic { get; init; }

    /// <summary>JSON Pointer to the value that was offered; empty for a bare number.</summary>
    public string? ValuePointer { get; init; }

    /// <summary>The unit, where the guess was wrong; empty takes the guess.</summary>
    public string? Unit { get; init; }

    /// <summary><c>place NAME</c>, <c>jar NUMBER</c> or <c>nowhere</c>.</summary>
    public string? Where { get; init; }
}

/// <summary>
/// What a tap on an offer comes to. It has an address of its own: offers come and go with what is heard, and a form that a page
/// no longer shows could not be handed in there.
/// </summary>
internal static class OfferTap
{
    /// <summary>Where the buttons of an offer lead.</summary>
    public const string Path = "/sensors/take";

    public static void MapOfferTap(this WebApplication app) => app.MapPost(Path, TakeAsync).ExcludeFromDescription();

    private static async Task<IResult> TakeAsync([FromForm] OfferTapForm form, OfferDesk desk, CancellationToken cancellationToken)
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
