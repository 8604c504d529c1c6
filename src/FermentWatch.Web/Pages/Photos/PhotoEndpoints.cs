using System.Security.Claims;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Web.Accounts;
using FermentWatch.Web.Gates;
using Microsoft.AspNetCore.Mvc;

namespace FermentWatch.Web.Pages.Photos;

/// <summary>Where pictures of what was seen come in and go out.</summary>
internal static class PhotoEndpoints
{
    public static void MapPhotos(this WebApplication app)
    {
        app.MapPost("/photos/{observation:guid}", KeepAsync).Does<PhotoDesk>().ExcludeFromDescription()
            .WithMetadata(new RequestSizeLimitAttribute(SmallPhoto.LargestFile + (1 << 16)));
        app.MapGet("/photos/{observation:guid}", FindAsync).ExcludeFromDescription();
    }

    private static async Task<IResult> KeepAsync(
        Guid observation, [FromForm] int jar, IFormFile photo, ClaimsPrincipal person, PhotoDesk desk, CancellationToken cancellationToken)
    {
        (Refusal? refusal, bool isThere) = await desk.KeepAsync(observation, photo, person.Known(), person.Role() == MemberRole.Adult,
            cancellationToken);
        if (!isThere)
            return Results.NotFound();
        return Results.Redirect(refusal is null ? $"~/jars/{jar}" : $"~/jars/{jar}?photo={Uri.EscapeDataString(refusal.ToString())}");
    }

    private static async Task<IResult> FindAsync(Guid observation, IPhotoBook book, CancellationToken cancellationToken) =>
        await book.FindAsync(observation, cancellationToken) is { } photo ? Results.Bytes(photo.Jpeg, "image/jpeg") : Results.NotFound();
}
