using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.RunningTests;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace FermentWatch.Service.Tests.Api;

/// <summary>The calendar as a calendar program fetches it: by its address alone.</summary>
public sealed class CalendarTests : IAsyncLifetime
{
    private RunningKitchen _kitchen = null!;
    private Script _ada = null!, _program = null!;

    public async Task InitializeAsync()
    {
        _kitchen = await RunningKitchen.StartAsync();
        _ada = await Script.SignedInAsync(_kitchen);
        _program = Script.Stranger(_kitchen);
    }

    public async Task DisposeAsync()
    {
        _ada.Dispose();
        _program.Dispose();
        await _kitchen.DisposeAsync();
    }

    [Fact]
    public async Task File_OfAHousehold_HoldsTastingDaysAndRoundsAtItsHour()
    {
        IHouseholdBook book = _kitchen.Services.GetRequiredService<IHouseholdBook>();
        Household household = await book.ReadAsync(default);
        (household.TimeZoneId, household.RoundAt) = ("Europe/Vienna", new LocalTime(6, 30));
        await book.WriteAsync(household, default);
        await _ada.PutUpAsync(("how_many", "2"));
        await _kitchen.SettleAsync();
        string address = await RenewAsync();

        HttpResponseMessage answer = await _program.Http.GetAsync(address);
        Assert.Equal(("text/calendar", "utf-8"), (answer.Content.Headers.ContentType!.MediaType, answer.Content.Headers.ContentType.CharSet));
        Calendar file = Calendar.Load(await answer.Content.ReadAsStringAsync())!;
        // One jar is tasted for its lot.
        Assert.StartsWith("Taste jar 1: ", Assert.Single(file.Events).Summary, StringComparison.Ordinal);
        Assert.Contains("It stands for 2.", file.Events[0]!.Description, StringComparison.Ordinal);
        JsonElement jar = await _ada.GetAsync("/api/v1/jars/1/forecast");
        double days = jar.GetProperty("sour_enough").GetProperty("days_p50").GetDouble();
        LocalDate expected = (_kitchen.Now + NodaTime.Duration.FromDays(days)).InZone(household.Zone).Date;
        Assert.InRange(Period.DaysBetween(expected, LocalDate.FromDateOnly(file.Events[0]!.Start!.Date)), -1, 1);
        Assert.NotEmpty(file.Todos);
        Assert.All(file.Todos, round => Assert.Equal(
            new LocalTime(6, 30), Instant.FromDateTimeUtc(DateTime.SpecifyKind(round.Due!.AsUtc, DateTimeKind.Utc))
                .InZone(household.Zone).TimeOfDay));
    }

    [Fact]
    public async Task File_NothingChanged_IsTheSameToTheLastByteAndNotSentAgain()
    {
        await _ada.PutUpAsync();
        await _kitchen.SettleAsync();
        string address = await RenewAsync();
        HttpResponseMessage first = await _program.Http.GetAsync(address);
        _kitchen.Clock.Advance(TimeSpan.FromSeconds(20));
        using var again = new HttpRequestMessage(HttpMethod.Get, address);
        again.Headers.IfNoneMatch.Add(first.Headers.ETag!);
        Assert.Equal(HttpStatusCode.NotModified, (await _program.Http.SendAsync(again)).StatusCode);
    }

    [Fact]
    public async Task File_RoundAllWell_IsCompletedAndAsksNoMore()
    {
        await _ada.PutUpAsync(
            ("packed_at", _kitchen.Clock.GetUtcNow().AddDays(-3).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)));
        string address = await RenewAsync();
        Todo before = Calendar.Load(await _program.Http.GetStringAsync(address))!.Todos[0]!;
        await _ada.PostAsync("/api/v1/round/today/all-well", new { opened = true });
        Todo after = Calendar.Load(await _program.Http.GetStringAsync(address))!.Todos[0]!;
        Assert.Equal((before.Uid, "NEEDS-ACTION", "COMPLETED"), (after.Uid, before.Status, after.Status));
        Assert.Equal((1, 0), (before.Alarms.Count, after.Alarms.Count));
        Assert.True(after.DtStamp!.AsUtc >= before.DtStamp!.AsUtc);
    }

    [Fact]
    public async Task File_OfOneWhoLooksOnSundays_HoldsTheRoundsOfSundays()
    {
        await _ada.PutUpAsync();
        string address = await RenewAsync();
        await _kitchen.Services.GetRequiredService<IMemberBook>().WriteAsync(new Duty { Person = "Ada", Days = Weekdays.Sunday }, default);
        Calendar file = Calendar.Load(await _program.Http.GetStringAsync(address))!;
        Assert.Equal([DayOfWeek.Sunday], file.Todos.Select(round => round.Due!.AsUtc.DayOfWeek));
    }

    [Fact]
    public async Task Address_MadeAnew_TheOldOneOpensNothing()
    {
        Assert.Equal(HttpStatusCode.NotFound, (await _ada.Http.GetAsync("/api/v1/calendar")).StatusCode);
        string old = await RenewAsync(), now = await RenewAsync();
        Assert.Equal(HttpStatusCode.NotFound, (await _program.Http.GetAsync(old)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await _program.Http.GetAsync(now)).StatusCode);
        Assert.Equal(now, (await _ada.GetAsync("/api/v1/calendar")).GetProperty("path").GetString());
        Assert.Equal(HttpStatusCode.Unauthorized, (await _program.Http.GetAsync("/api/v1/calendar")).StatusCode);
    }

    private async Task<string> RenewAsync() =>
        (await (await _ada.PostAsync("/api/v1/calendar", new { })).Content.ReadFromJsonAsync<JsonElement>()).GetProperty("path").GetString()!;
}
