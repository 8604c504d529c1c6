using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using System.Text.RegularExpressions;
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
        IssuedCredential button = new CredentialIssuer().ForGateway("button", "fermentwatch/jar/+/checked");
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
    public async Task Press_ByACredentialAddedThroughTheApi_IsALookUntilItIsTakenAway()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync(("Mqtt:Enabled", "true"), ("Mqtt:Port", "0"));
        using Script script = await Script.SignedInAsync(kitchen);
        await script.PutUpAsync();
        HttpResponseMessage added = await script.PostAsync("/api/v1/gateways", new { name = "Cellar buttons" });
        Assert.Equal(HttpStatusCode.Created, added.StatusCode);
        JsonElement gateway = await added.Content.ReadFromJsonAsync<JsonElement>();
        Assert.Equal(("cellar-buttons", "fermentwatch/jar/+/checked"),
            (gateway.GetProperty("user").GetString(), gateway.GetProperty("filter").GetString()));
        string password = gateway.GetProperty("password").GetString()!;
        await using Listener device = await Listener.AtAsync(kitchen.Services.GetRequiredService<Broker>().Port!.Value, "cellar-buttons", password);

        await device.SayAsync("fermentwatch/jar/1/checked", "");

        Assert.IsType<Look>(Assert.Single((await kitchen.Services.GetRequiredService<IJarBook>().FindAsync(1, default))!.Standing));
        JsonElement listed = Assert.Single((await script.GetAsync("/api/v1/gateways")).EnumerateArray());
        Assert.Equal(["user", "filter", "made_by"], listed.EnumerateObject().Select(property => property.Name));
        Assert.Contains("<strong>cellar-buttons</strong> may publish under <code>fermentwatch/jar/&#x2B;/checked</code>",
            await script.Http.GetStringAsync("/sensors"), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NoContent, (await script.Http.DeleteAsync("/api/v1/gateways/cellar-buttons")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await script.Http.DeleteAsync("/api/v1/gateways/cellar-buttons")).StatusCode);
        Assert.Empty(await kitchen.Services.GetRequiredService<ISensorBook>().GatewaysAsync(default));
    }

    [Fact]
    public async Task Add_OnThePage_ShowsThePasswordOnceAndRemovesAgain()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync(("Mqtt:Enabled", "true"), ("Mqtt:Port", "0"));
        using Script script = await Script.SignedInAsync(kitchen);
        var book = kitchen.Services.GetRequiredService<ISensorBook>();
        HttpResponseMessage added =
            await script.SendFormAsync("/sensors", "gateway-new", ("Form.Name", "Cellar buttons"), ("Form.Filter", "fermentwatch/jar/+/checked"));
        Assert.Equal((HttpStatusCode.OK, true), (added.StatusCode, added.Headers.CacheControl!.NoStore));
        string password = Regex.Match(await added.Content.ReadAsStringAsync(), "Password <code>([^<]+)</code>").Groups[1].Value;
        Assert.True(SensorPassword.Verify(Assert.Single(await book.GatewaysAsync(default)), password));
        Assert.DoesNotContain(password, await script.Http.GetStringAsync("/sensors"), StringComparison.Ordinal);

        HttpResponseMessage again =
            await script.SendFormAsync("/sensors", "gateway-new", ("Form.Name", "cellar buttons"), ("Form.Filter", "zigbee/#"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, again.StatusCode);
        Assert.Equal(HttpStatusCode.Redirect, (await script.SendFormAsync("/sensors", "gateway-cellar-buttons")).StatusCode);
        Assert.Empty(await book.GatewaysAsync(default));
    }

    [Theory]
    [InlineData("buttons", "", "gateway")]
    [InlineData("buttons", "zigbee/#/x", "gateway")]
    [InlineData("!", "zigbee/#", "name")]
    public async Task Add_WhatCannotBe_IsRefusedByItsField(string name, string filter, string field)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        HttpResponseMessage refused = await script.PostAsync("/api/v1/gateways", new { name, filter });
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        JsonElement refusal = Assert.Single((await refused.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("refusals").EnumerateArray());
        Assert.Equal(field, refusal.GetProperty("field").GetString());
        Assert.Empty(await kitchen.Services.GetRequiredService<ISensorBook>().GatewaysAsync(default));
    }

    [Fact]
    public async Task Press_JarThatIsNone_IsCountedAndFilesNothing()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync(("Mqtt:Enabled", "true"), ("Mqtt:Port", "0"));
        IssuedCredential button = new CredentialIssuer().ForGateway("button", "fermentwatch/jar/#");
        await kitchen.Services.GetRequiredService<ISensorBook>().AddGatewayAsync(button.Credential, default);
        await using Listener device = await Listener.AtAsync(kitchen.Services.GetRequiredService<Broker>().Port!.Value, "button", button.Password);

        await Assert.ThrowsAnyAsync<Exception>(() => device.SayAsync("fermentwatch/jar/9/checked", ""));

        RejectCount reject = Assert.Single(await kitchen.Services.GetRequiredService<IReadingLog>().RejectsAsync(default));
        Assert.Equal((RejectReason.UnknownSensor, "There is no jar '9' to look at."), (reject.Last.Reason, reject.Last.Explanation));
    }
}
