using FermentWatch.Acts;
using FermentWatch.RunningTests;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace FermentWatch.Service.Tests.Architecture;

/// <summary>Whom a door lets through follows from the act behind it.</summary>
public class DoorActTests
{
    private static readonly string[] Writes = ["POST", "PUT", "DELETE"];

    [Fact]
    public async Task Api_EveryWriteThatNeedsASignIn_NamesItsAct()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        var doors = kitchen.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(door => door.RoutePattern.RawText!.StartsWith("/api/", StringComparison.Ordinal)
                && door.Metadata.GetMetadata<IAllowAnonymous>() is null
                && door.Metadata.GetMetadata<IHttpMethodMetadata>()!.HttpMethods.Any(Writes.Contains)).ToList();
        Assert.True(doors.Count > 20, $"{doors.Count} doors");
        Assert.Empty(doors.Where(door => door.Metadata.GetMetadata<DoesAttribute>() is null).Select(door => door.RoutePattern.RawText));
    }

    [Fact]
    public void OpenToChildren_IsWhatTheyLookAtReportEatAndTakeBackAndTheirOwnPhone() => Assert.Equal(
        ["AnswerBoard", "EnterWeekSheet", "HandOverRound", "KeepPhoto", "OpenJar", "ReportSeen", "ReportTaste", "SayAllWell", "TakeBackEntry",
            "TakePortion", "TellPhone"],
        typeof(DoesAttribute).Assembly.GetTypes().Where(act => act.IsDefined(typeof(OpenToChildrenAttribute), inherit: false))
            .Select(act => act.Name).Order());
}
