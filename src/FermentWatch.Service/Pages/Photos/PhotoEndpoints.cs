using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Observations;
using Microsoft.AspNetCore.Mvc;

namespace FermentWatch.Service.Pages.Photos;

/// <summary>Where pictures of what was seen come in and go out.</summary>
internal static class PhotoEndpoints
{
    public static void MapPhotos(this WebApplication app)
    {
        app.MapPost("/photos/{observation:guid}", KeepAsync).ExcludeFromDescription()
            .WithMetadata(new RequestSizeLimitAttribute(SmallPhoto.LargestFile + (1 << 16)));
        app.MapGet("/photos/{observation:guid}", FindAsync).ExcludeFromDescription();
    }

    private static async Task<IResult> KeepAsync(
        Guid observation, [FromForm] int jar, IFormFile photo, IPhotoBook book, CancellationToken cancellationToken)
    {
        using var file = new MemoryStream();
        await photo.CopyToAsync(file, cancellationToken);
        (byte[]? jpeg, Refusal? refusal) = SmallPhoto.Of(file.ToArray());
        if (jpeg is null)
            return Results.Redirect($"~/jars/{jar}?photo={Uri.EscapeDataString(refusal!.ToString())}");
        return await book.KeepAsync(new Photo { ObservationId = observation, Jpeg = jpeg }, cancellationToken)
            ? Results.Redirect($"~/jars/{jar}") : Results.NotFound();
    }

    private static async Task<IResult> FindAsync(Guid observation, IPhotoBook book, CancellationToken cancellationToken) =>
        await book.FindAsync(observation, cancellationToken) is { } photo ? Results.Bytes(photo.Jpeg, "image/jpeg") : Results.NotFound();
}
