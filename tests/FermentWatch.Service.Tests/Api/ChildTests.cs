using System.Net;
using FermentWatch.Kitchen.Notices;
using FermentWatch.RunningTests;
using Microsoft.Extensions.DependencyInjection;

namespace FermentWatch.Service.Tests.Api;

/// <summary>Children look and report; adults settle trouble, enter pH, taste first.</summary>
public class ChildTests
{
    [Fact]
    public async Task Child_LooksAndReports_AndWhatIsForAdultsIsRefused()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        using Script lena = await Script.ChildAsync(kitchen);
        await ada.PutUpAsync(
            ("packed_at", kitchen.Clock.GetUtcNow().AddDays(-4).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)));

        Assert.Equal(HttpStatusCode.OK, (await lena.PostAsync("/api/v1/round/today/seen", new { jar = 1, what = "Film" })).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await lena.PostAsync("/api/v1/jars/1/ph", new { ph = "3.9", method = "strip" })).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden,
            (await lena.PostAsync("/api/v1/round/today/stage", new { jar = 1, what = "ThrownOut", note = "film" })).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await lena.PutUpAsync()).StatusCode);
        Assert.Equal(HttpStatusCode.UnprocessableEntity,
            (await lena.PostAsync("/api/v1/round/today/taste", new { jar = 1, what = "NotYet" })).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await ada.PostAsync("/api/v1/round/today/taste", new { jar = 1, what = "NotYet" })).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await lena.PostAsync("/api/v1/round/today/taste", new { jar = 1, what = "Nearly" })).StatusCode);
    }

    [Fact]
    public async Task Child_SeesFilm_AsksTheAdultsOnce()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        using Script lena = await Script.ChildAsync(kitchen);
        foreach (string person in (string[])["Ada", "Lena"])
            await ada.PostAsync("/api/v1/notice-routes", new { person, channel = "Mqtt", address = $"kitchen/{person}" });
        await ada.PutUpAsync();
        // Noon: whatever the hour at which the test runs, people are told of things then.
        kitchen.Clock.Advance(TimeSpan.FromHours(36 - kitchen.Clock.GetUtcNow().TimeOfDay.TotalHours));
        await lena.PostAsync("/api/v1/round/today/seen", new { jar = 1, what = "Film" });
        await kitchen.SettleAsync();
        await kitchen.SettleAsync();

        Notice asked = Assert.Single(await LatestAsync(kitchen), notice => notice.Key.StartsWith("occasion/", StringComparison.Ordinal));
        Assert.Equal(("Ada", "An adult is asked: jar 1 (cabbage)"), (asked.Person, asked.Title));
    }

    [Fact]
    public async Task Occasions_MutedByTheApi_IsSaidThereAndAnUnknownKindIsNotFound()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        Assert.Equal(HttpStatusCode.NoContent, (await ada.PutAsync("/api/v1/occasions/PhDue", new { muted = true })).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await ada.PutAsync("/api/v1/occasions/Moonrise", new { muted = true })).StatusCode);
        Assert.Equal(["PhDue"], (await ada.GetAsync("/api/v1/occasions")).EnumerateArray().Where(kind => kind.GetProperty("muted").GetBoolean())
            .Select(kind => kind.GetProperty("kind").GetString()));
    }

    private static Task<IReadOnlyList<Notice>> LatestAsync(RunningKitchen kitchen) =>
        kitchen.Services.GetRequiredService<INoticeBook>().LatestAsync(20, CancellationToken.None);
}
