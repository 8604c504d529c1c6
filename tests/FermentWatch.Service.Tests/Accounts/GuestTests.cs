using System.Net;
using System.Text.RegularExpressions;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.RunningTests;
using FermentWatch.Service.Tests.Api;
using Microsoft.Extensions.DependencyInjection;
using static System.Globalization.CultureInfo;

namespace FermentWatch.Service.Tests.Accounts;

/// <summary>Who looks in by a link answers the round, and nothing of it counts as an adult's.</summary>
public class GuestTests
{
    [Fact]
    public async Task Seen_SentAgainWithAnotherAnswer_IsAskedAboutAndCanTakeTheFirstOnesPlace()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        (Script guest, string link) = await LookInAsync(kitchen);
        using Script _ = guest;
        string id = Guid.CreateVersion7().ToString();
        Assert.Equal(HttpStatusCode.Found, (await SeenAsync(guest, link, id, "Slime")).StatusCode);

        HttpResponseMessage asked = await SeenAsync(guest, link, id, "Film");

        Assert.Equal(HttpStatusCode.UnprocessableEntity, asked.StatusCode);
        Assert.Contains("You sent this form before with", await asked.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal([SightingKind.Slime], await StandingAsync(kitchen));
        Assert.Equal(HttpStatusCode.Found, (await SeenAsync(guest, link, id, "Film", ("Input.Again", "Correction"))).StatusCode);
        Assert.Equal([SightingKind.Film], await StandingAsync(kitchen));
        Assert.All((await kitchen.Services.GetRequiredService<IJarBook>().FindAsync(1, default))!.Observations.OfType<Sighting>(),
            sighting => Assert.Equal(MemberRole.Child, sighting.SeenAs));
    }

    private static Task<HttpResponseMessage> SeenAsync(Script guest, string link, string id, string what, params (string, string)[] more) =>
        guest.SendFormAsync(link, "guest-seen", [("Input.Id", id), ("Input.Jar", "1"), ("Input.What", what), .. more]);

    private static async Task<IEnumerable<SightingKind>> StandingAsync(RunningKitchen kitchen) =>
        (await kitchen.Services.GetRequiredService<IJarBook>().FindAsync(1, default))!.Standing.OfType<Sighting>().Select(each => each.Kind);

    /// <summary>A household with one jar of nine days, and a guest's browser with the link.</summary>
    private static async Task<(Script Guest, string Link)> LookInAsync(RunningKitchen kitchen)
    {
        using Script ada = await Script.SignedInAsync(kitchen);
        await ada.PutUpAsync(("packed_at", kitchen.Clock.GetUtcNow().AddDays(-9).ToString("yyyy-MM-dd", InvariantCulture)));
        HttpResponseMessage made = await ada.SendFormAsync("/household", "guest-new", ("Guest.Name", "Ben"), ("Guest.Days", "7"));
        string link = Regex.Match(await made.Content.ReadAsStringAsync(), "/guest/[A-Za-z0-9_-]+").Value;
        return (Script.Stranger(kitchen), link);
    }
}
