using System.Diagnostics;
using System.Net;
using FermentWatch.RunningTests;
using FermentWatch.Service.Tests.Api;

namespace FermentWatch.Service.Tests.Accounts;

/// <summary>Guessing passwords, and signing in beside somebody who does.</summary>
public sealed class SignInTests
{
    [Fact]
    public async Task Page_OfAHouseholdThatIsNotSetUp_SaysWhereTheOneTimeAddressWasPrintedUntilItIs()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script stranger = Script.Stranger(kitchen);
        const string Unset = "Nobody can sign in yet: this kitchen is not set up. The address for it, which works once, was printed where the "
            + "service was started:";
        string before = await stranger.Http.GetStringAsync("/sign-in");
        Assert.Contains(Unset, before, StringComparison.Ordinal);
        Assert.Contains("journalctl -u fermentwatch", before, StringComparison.Ordinal);

        using Script ada = await Script.SignedInAsync(kitchen);

        Assert.DoesNotContain("not set up", await stranger.Http.GetStringAsync("/sign-in"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task SignIn_AfterManyWrongTriesOfOthersFromTheSameAddress_TakesTheRightOneAfterASecond()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        using Script stranger = Script.Stranger(kitchen);
        int tries = Environment.GetEnvironmentVariable("FERMENTWATCH_TESTS_LONG") == "1" ? 200 : 50;
        foreach (int[] some in Enumerable.Range(0, tries).Chunk(10))
        {
            (HttpStatusCode Status, TimeSpan)[] wrong = await Task.WhenAll(
                some.Select(i => SignInAsync(kitchen, stranger, $"nobody{i}", "wrong guess 1", perStep: 1)));
            Assert.All(wrong, answer => Assert.Equal(HttpStatusCode.Unauthorized, answer.Status));
        }

        (HttpStatusCode status, TimeSpan waited) = await SignInAsync(kitchen, stranger, Script.User, Script.Password, perStep: 0.1);
        Assert.Equal(HttpStatusCode.NoContent, status);
        Assert.InRange(waited.TotalSeconds, 0.5, 6);
    }

    [Fact]
    public async Task SignIn_WrongTriesOnTheOwnersName_SlowDownAndNeverLockTheOwnerOut()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        using Script stranger = Script.Stranger(kitchen);
        var waits = new List<double>();
        for (int i = 0; i < 8; i++)
            waits.Add((await SignInAsync(kitchen, stranger, Script.User, $"wrong guess {i}", perStep: 0.1)).Waited.TotalSeconds);
        Assert.Equal([0, 0, 0], waits.Take(3));
        // The clock is moved on while a loaded machine still hashes, so that a wait may come out longer; how long it is: GuessPaceTests.
        foreach ((double wait, double least) in waits.Skip(3).Zip([0.5, 1, 2, 4, 8]))
            Assert.InRange(wait, least - 0.1, least + 4);

        (HttpStatusCode status, TimeSpan waited) = await SignInAsync(kitchen, stranger, Script.User, Script.Password, perStep: 0.5);
        Assert.Equal(HttpStatusCode.NoContent, status);
        Assert.InRange(waited.TotalSeconds, 14.9, 20);
    }

    [Fact]
    public async Task SignIn_NameThatIsThereOrNot_IsAnsweredAlikeAndAfterTheSameWork()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        using Script stranger = Script.Stranger(kitchen);
        await stranger.PostAsync("/api/v1/sign-in", new { user = "warm", password = "wrong guess 1" });
        (string known, TimeSpan knownTook) = await FastestAsync(stranger, Script.User);
        (string unknown, TimeSpan unknownTook) = await FastestAsync(stranger, "nobody");
        Assert.Equal(known, unknown);
        // Without the hashing a name that is not there would be answered in a fiftieth of the time.
        Assert.InRange(unknownTook / knownTook, 0.1, 20);
    }

    private static async Task<(string Body, TimeSpan Took)> FastestAsync(Script stranger, string user)
    {
        string body = "";
        var took = new List<TimeSpan>();
        for (int i = 0; i < 3; i++)
        {
            long start = Stopwatch.GetTimestamp();
            HttpResponseMessage answer = await stranger.PostAsync("/api/v1/sign-in", new { user, password = $"wrong guess {i}" });
            took.Add(Stopwatch.GetElapsedTime(start));
            Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
            body = System.Text.RegularExpressions.Regex.Replace(await answer.Content.ReadAsStringAsync(), "\"trace_id\":\"[^\"]*\"", "");
        }
        return (body, took.Min());
    }

    /// <summary>Tries to sign in and moves the clock by steps of some seconds until it is answered; how much of it the answer waited.</summary>
    private static async Task<(HttpStatusCode Status, TimeSpan Waited)> SignInAsync(RunningKitchen kitchen, Script script, string user,
        string password, double perStep)
    {
        DateTimeOffset begun = kitchen.Clock.GetUtcNow();
        Task<HttpResponseMessage> asked = script.PostAsync("/api/v1/sign-in", new { user, password });
        long start = Stopwatch.GetTimestamp();
        // The first while is for the hashing of a loaded machine; who is not answered then waits for the clock.
        int patience = 2500;
        while (await Task.WhenAny(asked, Task.Delay(TimeSpan.FromMilliseconds(patience), TimeProvider.System)) != asked)
        {
            patience = 20;
            Assert.True(Stopwatch.GetElapsedTime(start) < TimeSpan.FromSeconds(60), "a sign-in is answered within a minute");
            kitchen.Clock.Advance(TimeSpan.FromSeconds(perStep));
        }
        return ((await asked).StatusCode, kitchen.Clock.GetUtcNow() - begun);
    }
}
