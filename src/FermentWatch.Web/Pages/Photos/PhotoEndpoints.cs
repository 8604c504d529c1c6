using System.Security.Claims;
using System.Security.Cryptography;
using FermentWatch.Acts.Photos;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Web.Accounts;
using FermentWatch.Web.Gates;
using Microsoft.AspNetCore.Mvc;
using Microsoft.Net.Http.Headers;

namespace FermentWatch.Web.Pages.Photos;

/// <summary>Where pictures of what was seen come in and go out.</summary>
internal static class PhotoEndpoints
{
    public static void MapPhotos(this WebApplication app)
    {
        app.MapPost("/photos/{observation:guid}", KeepAsync).Does<KeepPhoto>().ExcludeFromDescription()
            .WithMetadata(new RequestSizeLimitAttribute(SmallPhoto.LargestFile + (1 << 16)));
        app.MapGet("/photos/{observation:guid}", FindAsync).ExcludeFromDescription();
        app.MapGet("/photos/{observation:guid}/small", FindSmallAsync).ExcludeFromDescription();
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

    private static async Task<IResult> FindAsync(Guid observation, PhotoReader photos, CancellationToken cancellationToken) =>
        await photos.FindAsync(observation, cancellationToken) is { } photo ? Jpeg(photo.Jpeg, photo) : Results.NotFound();

    /// <summary>As small as a row shows it.</summary>
    private static async Task<IResult> FindSmallAsync(Guid observation, HttpRequest request, PhotoReader photos, CancellationToken cancellationToken)
    {
        if (await photos.FindAsync(observation, cancellationToken) is not { } photo)
            return Results.NotFound();
        // What the browser has already is not made small again.
        if (request.GetTypedHeaders().IfNoneMatch.Any(tag => tag.Compare(TagOf(photo), useStrongComparison: false)))
            return Results.StatusCode(StatusCodes.Status304NotModified);
        using var file = new MemoryStream(photo.Jpeg);
        return Jpeg(SmallPhoto.Of(file, SmallPhoto.OnARow).Jpeg ?? photo.Jpeg, photo);
    }

    private static IResult Jpeg(byte[] content, Photo photo) => Results.Bytes(content, "image/jpeg", entityTag: TagOf(photo));

    /// <summary>Another where the photo was replaced.</summary>
    private static EntityTagHeaderValue TagOf(Photo photo) => new($"\"{Convert.ToHexStringLower(SHA256.HashData(photo.Jpeg)[..12])}\"");
}
