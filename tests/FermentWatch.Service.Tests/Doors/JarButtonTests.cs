using FermentWatch.Intake.Credentials;
using FermentWatch.Intake.Embedded;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.RunningTests;
using FermentWatch.Service.Tests.Api;
using Microsoft.Extensions.DependencyInjection;

namespace FermentWatch.Service.Tests.Doors;

/// <summary>A button by the jars, through the broker.</summary>
public class JarButtonTests
{
    [Fact]
    public async Task Press_TwiceByNumberAndById_IsOneLookOfThatJar()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync(("Mqtt:Enabled", "true"), ("Mqtt:Port", "0"));
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync(("how_many", "2"));
        IssuedCredential button = CredentialIssuer.ForGateway("button", "fermentwatch/jar/+/checked");
        await kitchen.Services.GetRequiredService<ISensorBook>().AddGatewayAsync(button.Credential, default);
        await using Listener device = await Listener.AtAsync(kitchen.Services.GetRequiredService<Broker>().Port!.Value, "button", button.Password);
        var jars = kitchen.Services.GetRequiredService<IJarBook>();
        Jar second = (await jars.FindAsync(2, default))!;

        await device.SayAsync("fermentwatch/jar/2/checked", "");
        await device.SayAsync("fermentwatch/jar/2/checked", "on");
        await device.SayAsync($"fermentwatch/jar/{second.Id}/checked", "pressed");

        Look look = Assert.IsType<Look>(Assert.Single((await jars.FindAsync(2, default))!.Standing));
        Assert.Equal(("the button", false), (look.By, look.Opened));
        Assert.Empty((await jars.FindAsync(1, default))!.Standing);
    }

    [Fact]
    public async Task Press_JarThatIsNone_IsCountedAndFilesNothing()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync(("Mqtt:Enabled", "true"), ("Mqtt:Port", "0"));
        IssuedCredential button = CredentialIssuer.ForGateway("button", "fermentwatch/jar/#");
        await kitchen.Services.GetRequiredService<ISensorBook>().AddGatewayAsync(button.Credential, default);
        await using Listener device = await Listener.AtAsync(kitchen.Services.GetRequiredService<Broker>().Port!.Value, "button", button.Password);

        await Assert.ThrowsAnyAsync<Exception>(() => device.SayAsync("fermentwatch/jar/9/checked", ""));

        RejectCount reject = Assert.Single(await kitchen.Services.GetRequiredService<IReadingLog>().RejectsAsync(default));
        Assert.Equal((RejectReason.UnknownSensor, "There is no jar '9' to look at."), (reject.Last.Reason, reject.Last.Explanation));
    }
}
