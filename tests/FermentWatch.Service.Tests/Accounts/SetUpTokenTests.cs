using System.Net;
using FermentWatch.RunningTests;
using FermentWatch.Service.Tests.Api;
using FermentWatch.Web.Accounts;
using Microsoft.Extensions.DependencyInjection;

namespace FermentWatch.Service.Tests.Accounts;

public class SetUpTokenTests
{
    [Fact]
    public async Task Path_SecondServiceOnTheSameFolder_IsTheSame()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using var again = ActivatorUtilities.CreateInstance<SetUpToken>(kitchen.Services);
        string? first = await kitchen.Services.GetRequiredService<SetUpToken>().PathAsync(CancellationToken.None);
        Assert.Equal(first, await again.PathAsync(CancellationToken.None));
        Assert.Equal("/set-up/".Length + 20, first!.Length);
    }

    [Fact]
    public async Task Page_WrongTokenOrAfterTheFirstAccount_OpensNothing()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script stranger = Script.Stranger(kitchen);
        string address = await kitchen.SetUpAddressAsync();
        Assert.Equal(HttpStatusCode.Forbidden, (await stranger.Http.GetAsync("/set-up/00000000000000000000")).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await stranger.Http.GetAsync(address)).StatusCode);

        using Script owner = await Script.SignedInAsync(kitchen);

        Assert.Equal(HttpStatusCode.Forbidden, (await stranger.Http.GetAsync(address)).StatusCode);
        Assert.Null(await kitchen.Services.GetRequiredService<SetUpToken>().PathAsync(CancellationToken.None));
    }
}
