using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.RunningTests;
using FermentWatch.Service.Tests.Api;
using FermentWatch.Web.Gates;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace FermentWatch.Service.Tests.Web;

/// <summary>What a phone sends that was typed where there was no reception: the time it was typed counts, and 200 alone means written down.</summary>
public sealed class KeptEntriesTests : IAsyncLifetime
{
    private const string Board = "/round/answer", OneDay = "86400";

    private RunningKitchen _kitchen = null!;
    private Script _ada = null!;

    public async Task InitializeAsync()
    {
        _kitchen = await RunningKitchen.StartAsync();
        _ada = await Script.SignedInAsync(_kitchen);
        await _ada.PutUpAsync(("how_many", "3"), ("packed_at", "2026-10-06"));
    }

    public async Task DisposeAsync()
    {
        _ada.Dispose();
        await _kitchen.DisposeAsync();
    }

    [Fact]
    public async Task Board_PressedYesterday_IsALookOfYesterdayEnteredToday()
    {
        HttpResponseMessage answer = await SendAsync(Board, OneDay, AllWell("1,2,3"));

        Assert.Equal((HttpStatusCode.OK, "/?well=1,2,3"), (answer.StatusCode, To(answer)));
        Assert.All(await FiledAsync(), look => Assert.Equal((_kitchen.Now - Duration.FromDays(1), _kitchen.Now), (look.At, look.EnteredAt)));
        Assert.DoesNotContain("All looked at.", await _ada.Http.GetStringAsync("/"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Board_SentTwice_IsWrittenOnceAndSaidToBeWrittenBothTimes()
    {
        (string, string)[] fields = AllWell("1,2,3");
        await SendAsync(Board, "60", fields);
        _kitchen.Clock.Advance(TimeSpan.FromMinutes(5));
        HttpResponseMessage answer = await SendAsync(Board, "360", fields);

        Assert.Equal((HttpStatusCode.OK, "/?well=1,2,3"), (answer.StatusCode, To(answer)));
        Assert.Equal(3, (await FiledAsync()).Count);
    }

    [Fact]
    public async Task Board_OfAPageThatWasSentOnTheDayBefore_SaysThatNothingWasWritten()
    {
        (string, string)[] fields = AllWell("1");
        await SendAsync(Board, "0", fields);
        _kitchen.Clock.Advance(TimeSpan.FromDays(1));

        Assert.Equal("/?well=&left=1", To(await SendAsync(Board, "0", fields)));
        Assert.Single(await FiledAsync());
        Assert.Contains("Not written down for 1:", await _ada.Http.GetStringAsync("/?well=&left=1"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Board_JarInTheColdByNow_IsNotSaidToBeWritten()
    {
        await _ada.SendFormAsync("/jars/2/on", "cold", ("Input.Id", Guid.CreateVersion7().ToString()), ("Input.Place", "refrigerator"),
            ("Input.Choice", "Cold"));

        Assert.Equal("/?well=1,3&left=2", To(await SendAsync(Board, "60", AllWell("1,2,3"))));
    }

    [Fact]
    public async Task Ph_TypedTenHoursAgo_IsOfThen()
    {
        HttpResponseMessage answer = await SendAsync("/jars/1/ph", "36000", Form("ph", ("Input.Ph", "3.9"), ("Input.Method", "meter")));

        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Observation filed = Assert.Single(await FiledAsync());
        Assert.Equal((_kitchen.Now - Duration.FromHours(10), _kitchen.Now), (filed.At, filed.EnteredAt));
    }

    [Theory]
    [InlineData("39", HttpStatusCode.UnprocessableEntity)]
    [InlineData("", HttpStatusCode.UnprocessableEntity)]
    public async Task Ph_ThatIsNone_IsNoSuccess(string ph, HttpStatusCode status)
    {
        Assert.Equal(status, (await SendAsync("/jars/1/ph", "60", Form("ph", ("Input.Ph", ph), ("Input.Method", "meter")))).StatusCode);
        Assert.Empty(await FiledAsync());
    }

    [Theory]
    [InlineData("604801")]
    [InlineData("-5")]
    [InlineData("NaN")]
    [InlineData("soon")]
    [InlineData("")]
    public async Task Age_ThatCannotBe_IsRefusedAndNothingWritten(string age)
    {
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await SendAsync(Board, age, AllWell("1"))).StatusCode);
        Assert.Empty(await FiledAsync());
    }

    [Fact]
    public async Task Form_ThatIsNotOnItsPage_Is409()
    {
        Assert.Equal(HttpStatusCode.Conflict, (await SendAsync("/jars/1", "60", Form("handled-Skimmed-1"))).StatusCode);
        Assert.Empty(await FiledAsync());
    }

    [Fact]
    public async Task Stranger_Is401AndATokenOfNobodyIs400()
    {
        using Script stranger = Script.Stranger(_kitchen);
        Assert.Equal(HttpStatusCode.Unauthorized,
            (await SendAsync(stranger, Board, "60", [.. AllWell("1"), ("__RequestVerificationToken", "x")])).StatusCode);
        Assert.Equal(HttpStatusCode.BadRequest,
            (await SendAsync(_ada, Board, "60", [.. AllWell("1"), ("__RequestVerificationToken", "x")])).StatusCode);
        Assert.Equal(HttpStatusCode.Unauthorized, (await stranger.Http.GetAsync("/api/v1/form-ticket")).StatusCode);
        Assert.Empty(await FiledAsync());
    }

    [Fact]
    public async Task Child_SendingWhatIsForAdults_Is403OrRefused()
    {
        using Script lena = await Script.ChildAsync(_kitchen);
        Assert.Equal(HttpStatusCode.OK, (await SendAsync(lena, Board, "60", [.. AllWell("1"), await TicketAsync(lena)])).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden,
            (await SendAsync(lena, "/jars/1/ph", "60", [.. Form("ph", ("Input.Ph", "3.9")), await TicketAsync(lena)])).StatusCode);
        Assert.Equal("Lena", Assert.Single(await FiledAsync()).By);
    }

    [Fact]
    public async Task Pages_ToWhoeverIsSignedIn_SayWhoseTheyAreAndToOthersNothing()
    {
        Assert.True((await _ada.Http.GetAsync("/")).Headers.Contains("FermentWatch-Person"));
        using Script stranger = Script.Stranger(_kitchen);
        Assert.False((await stranger.Http.GetAsync("/sign-in")).Headers.Contains("FermentWatch-Person"));
        Assert.DoesNotContain("cabbage", await stranger.Http.GetStringAsync("/unsent"), StringComparison.OrdinalIgnoreCase);
    }

    private static (string, string)[] AllWell(string jars) => [("Input.Id", Guid.CreateVersion7().ToString()), ("Input.Jars", jars)];

    private static (string, string)[] Form(string name, params (string, string)[] fields) =>
        [("_handler", name), ("Input.Id", Guid.CreateVersion7().ToString()), .. fields];

    private async Task<HttpResponseMessage> SendAsync(string path, string age, (string, string)[] fields) =>
        await SendAsync(_ada, path, age, [.. fields, await TicketAsync(_ada)]);

    private static async Task<HttpResponseMessage> SendAsync(Script who, string path, string age, (string Name, string Value)[] fields)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post,
            path) { Content = new FormUrlEncodedContent(fields.Select(field => KeyValuePair.Create(field.Name, field.Value))) };
        request.Headers.TryAddWithoutValidation(KeptEntries.Header, age);
        return await who.Http.SendAsync(request);
    }

    private static async Task<(string, string)> TicketAsync(Script who)
    {
        JsonElement ticket = await who.GetAsync("/api/v1/form-ticket");
        return (ticket.GetProperty("field").GetString()!, ticket.GetProperty("token").GetString()!);
    }

    /// <summary>Where an answer leads, but for the id of the form.</summary>
    private static string To(HttpResponseMessage answer) =>
        Regex.Replace(answer.Headers.GetValues(KeptEntries.To).Single(), "&form=[0-9a-f-]{36}$", "");

    private async Task<IReadOnlyList<Observation>> FiledAsync() =>
        [.. (await _kitchen.Services.GetRequiredService<IJarBook>().AllAsync(default)).SelectMany(jar => jar.Observations)
            .Where(each => each is not StageChange)];
}
