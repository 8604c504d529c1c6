using System.Text.Json;
using FermentWatch.RunningTests;
using FermentWatch.Service.Tests.Api;
using static System.Globalization.CultureInfo;

namespace FermentWatch.Service.Tests.Pages;

/// <summary>What is said of the sourness of a jar that was tasted right.</summary>
public class TastedJarTests
{
    [Fact]
    public async Task TastedRight_SaysSoAndNoMoreThatItIsProbablySour_UntilTroubleWithdrawsTheForecast()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        await ada.PutUpAsync(("packed_at", kitchen.Clock.GetUtcNow().AddDays(-14).ToString("yyyy-MM-dd", InvariantCulture)));
        await kitchen.SettleAsync();

        await ada.PostAsync("/api/v1/round/today/taste", new { jar = 1, what = "Right" });
        await kitchen.SettleAsync();
        Assert.StartsWith("Tasted right today; ", await SourEnoughAsync(ada));

        await ada.PostAsync("/api/v1/round/today/seen", new { jar = 1, what = "Slime" });
        await kitchen.SettleAsync();
        Assert.Equal("Nothing is forecast since slime was seen, until a pH is measured.", await SourEnoughAsync(ada));
        Assert.DoesNotContain("Tasted right today", await ada.Http.GetStringAsync("/jars"), StringComparison.Ordinal);
    }

    private static async Task<string> SourEnoughAsync(Script ada)
    {
        using var jar = JsonDocument.Parse(await ada.Http.GetStringAsync("/api/v1/jars/1"));
        return jar.RootElement.GetProperty("sour_enough_words").GetString()!;
    }
}
