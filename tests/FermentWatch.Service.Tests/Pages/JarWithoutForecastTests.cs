using System.Net;
using FermentWatch.RunningTests;
using FermentWatch.Service.Tests.Api;
using static System.Globalization.CultureInfo;

namespace FermentWatch.Service.Tests.Pages;

/// <summary>The page of a jar of which nothing is forecast and around which nothing is measured.</summary>
public class JarWithoutForecastTests
{
    [Theory]
    [InlineData("PiecesUp", 0)]
    [InlineData("PiecesUp", -7)]
    [InlineData("Slime", -7)]
    [InlineData("FuzzOrUnsure", -8)]
    public async Task Page_TroubleSeenAndNothingMeasured_IsShown(string what, int packedDaysAgo)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        await ada.PutUpAsync(("packed_at", kitchen.Clock.GetUtcNow().AddDays(packedDaysAgo).ToString("yyyy-MM-dd", InvariantCulture)));
        if (packedDaysAgo > -8)
            await ada.PostAsync("/api/v1/round/today/all-well", new { opened = false });
        await kitchen.SettleAsync();
        await ada.PostAsync("/api/v1/round/today/seen", new { jar = 1, what });
        await kitchen.SettleAsync();

        foreach (string page in new[] { "/jars", "/jars/1", "/jars/1/beside", "/", "/jars/1/what-if" })
            Assert.Equal((page, HttpStatusCode.OK), (page, (await ada.Http.GetAsync(page)).StatusCode));
    }
}
