using System.Net;
using System.Text.Json;
using FermentWatch.TestKit;
using NodaTime;
using Host = FermentWatch.TestKit.TestHost;

namespace FermentWatch.Scenario.Tests.Yearly;

/// <summary>Five people, four of whose receivers are in trouble: one hangs, one refuses for a while, one fails all day, one is gone.</summary>
public sealed class TroubledReceiversTests
{
    private static readonly Instant _due = Instant.FromUtc(2026, 10, 2, 7, 0);
    private readonly TaskCompletionSource _wellIsTold = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private volatile bool _isRepaired;

    [Fact]
    public async Task Round_ReceiversHangRefuseAndAreGone_TheOthersAreToldAndNothingIsLostOrDoubled()
    {
        using var folder = new TemporaryFolder();
        await using Receiver receiver = await Receiver.StartAsync(AnswerAsync);
        await using Host host = await Host.StartAsync(folder.Path, _due - Duration.FromHours(19));
        using KitchenClient mira = await KitchenClient.SignInAsync(host, "Mira");
        foreach (string person in (string[])["fails", "hangs", "refuses", "gone", "well"])
            Assert.Equal(HttpStatusCode.Created,
                (await mira.PostAsync("/api/v1/notice-routes",
                new { person, channel = "Webhook", address = $"{receiver.Address}/{person}" })).Status);
        Assert.Equal(HttpStatusCode.Created,
            (await mira.PostAsync("/api/v1/jars",
            new { what = "cabbage", how_much = "800g", salt = "2.25%", vessel = "1l", place = "cellar" })).Status);

        Task morning = host.JumpAsync(_due);
        await _wellIsTold.Task.WaitAsync(TimeSpan.FromMinutes(3), TimeProvider.System);
        await morning;
        Assert.Equal(
            ["fails: Queued after 1, The receiver answered 500.", "gone: Refused after 1, The receiver says that it is gone (410).",
            $"hangs: Queued after 1, {new Uri(receiver.Address).GetLeftPart(UriPartial.Authority)} did not answer within 10 seconds.",
                "refuses: Queued after 1, The receiver answered 503.", "well: Delivered after 1, "],
            await StatesAsync(mira));

        _isRepaired = true;
        await host.JumpAsync(_due + Duration.FromSeconds(9));
        Assert.Equal(5, receiver.Got.Count);
        await host.JumpAsync(_due + Duration.FromMinutes(1));
        await host.JumpAsync(_due + Duration.FromMinutes(20));
        Assert.Equal(
            ["fails: Queued after 3, The receiver answered 500.", "gone: Refused after 1, The receiver says that it is gone (410).",
            "hangs: Delivered after 2, ", "refuses: Delivered after 2, ", "well: Delivered after 1, "],
            await StatesAsync(mira));
        Assert.Equal(["/kitchen/fails", "/kitchen/fails", "/kitchen/fails", "/kitchen/gone", "/kitchen/hangs", "/kitchen/hangs", "/kitchen/refuses",
            "/kitchen/refuses", "/kitchen/well"], receiver.Got.Select(posted => posted.Path).Order());
        Assert.Equal(5, receiver.Got.Select(posted => posted.Id).Distinct().Count());

        // The morning's message is pointless by the evening; the page still says why it never came.
        for (int quarter = 2; quarter <= 48; quarter++)
            await host.JumpAsync(_due + (Duration.FromMinutes(15) * quarter));
        Assert.StartsWith("fails: Expired after ", (await StatesAsync(mira)).First(state => state.StartsWith("fails", StringComparison.Ordinal)),
            StringComparison.Ordinal);
        Assert.EndsWith(", The receiver answered 500.", (await StatesAsync(mira))
            .First(state => state.StartsWith("fails", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.Equal(2, receiver.Got.Select(posted => posted.Id).Distinct().Count(id => id.Contains("/fails/", StringComparison.Ordinal)));
    }

    private async Task<int> AnswerAsync(Posted posted)
    {
        switch (posted.Path)
        {
            case "/kitchen/gone":
                return 410;
            case "/kitchen/fails":
                return 500;
            case "/kitchen/well":
                _wellIsTold.TrySetResult();
                return 204;
            case "/kitchen/refuses" when !_isRepaired:
                return 503;
            case "/kitchen/hangs" when !_isRepaired:
                // Longer than the product waits, and still an end, so that the receiver can be stopped.
                await Task.Delay(TimeSpan.FromSeconds(12), TimeProvider.System);
                return 204;
            default:
                return 204;
        }
    }

    private static async Task<IEnumerable<string>> StatesAsync(KitchenClient client) =>
        (await client.GetAsync("/api/v1/notices")).EnumerateArray().Select(notice =>
            $"{Text(notice, "person")}: {Text(notice, "state")} after {notice.GetProperty("attempts")}, {Text(notice, "last_trouble")}")
                .Order(StringComparer.Ordinal);

    private static string? Text(JsonElement notice, string name) => notice.TryGetProperty(name, out JsonElement value) ? value.GetString() : null;
}
