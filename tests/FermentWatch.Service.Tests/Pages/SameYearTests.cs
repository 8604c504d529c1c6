using FermentWatch.Acts.Histories;
using FermentWatch.Acts.Jars;
using FermentWatch.RunningTests;
using FermentWatch.Service.Tests.Api;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Service.Tests.Pages;

public class SameYearTests
{
    [Fact]
    public async Task Before_JarsOfSeveralYears_IsTheSameVegetableAboutAYearEarlier()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        string Days(int ago) => LocalDatePattern.Iso.Format((kitchen.Now - Duration.FromDays(ago)).InUtc().Date);
        await script.PutUpAsync(("packed_at", Days(10)));
        foreach ((string what, int ago) in new[] { ("cabbage", 400), ("cabbage", 372), ("carrot", 375), ("cabbage", 200), ("cabbage", 740) })
            await script.PutUpAsync(("what", what), ("packed_at", Days(ago)), ("it_is_right", "true"));
        IReadOnlyList<JarView> kept = await kitchen.Services.GetRequiredService<JarReader>().KeptAsync(default);
        JarView one = kept.Single(view => view.Jar.Number == 1);

        Assert.Equal(372 - 10, (one.Jar.PackedAt - SameYear.Before(one, kept)!.Jar.PackedAt).TotalDays, 1);
        Assert.Null(SameYear.Before(kept.Single(view => view.Jar.Portions[0].Produce == "carrot"), kept));
    }
}
