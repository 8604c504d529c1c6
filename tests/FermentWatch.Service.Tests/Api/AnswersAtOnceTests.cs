using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.RunningTests;
using Microsoft.Extensions.DependencyInjection;

namespace FermentWatch.Service.Tests.Api;

/// <summary>Two people answer at once, and one answer comes twice: nothing is lost, nothing doubled.</summary>
public class AnswersAtOnceTests
{
    [Theory]
    [InlineData("seen", "Film")]
    [InlineData("taste", "NotYet")]
    [InlineData("stage", "Finished")]
    public async Task Answer_TwoPeopleAtOnceSayTheSame_IsFiledOnceAndTheOtherLearnsWhoWasFirst(string what, string said)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen), jonah = await Script.SignedInAsync(kitchen, "jonah", "Jonah");
        await ada.PutUpAsync();
        var body = new { jar = 1, what = said };

        HttpResponseMessage[] answers = await Task.WhenAll(
            new[] { ada, jonah, ada, jonah }.Select(person => person.PostAsync($"/api/v1/round/today/{what}", body)));

        JsonElement[] taken = await Task.WhenAll(answers.Select(answer => answer.Content.ReadFromJsonAsync<JsonElement>()));
        Assert.All(answers, answer => Assert.Equal(HttpStatusCode.OK, answer.StatusCode));
        Assert.Equal([0, 0, 0, 1], taken.Select(each => each.GetProperty("filed").GetInt32()).Order());
        Assert.Equal(3, taken.Sum(each => each.GetProperty("known").GetArrayLength()));
        Observation filed = Assert.Single((await JarAsync(kitchen)).Observations);
        if (what != "stage")
            Assert.All(taken.Where(each => each.GetProperty("filed").GetInt32() == 0), each =>
                Assert.Contains(filed.By, each.GetProperty("known")[0].GetString(), StringComparison.Ordinal));
    }

    [Fact]
    public async Task Answer_TwoPeopleAtOnceSayDifferentThings_BothAreKept()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen), jonah = await Script.SignedInAsync(kitchen, "jonah", "Jonah");
        await ada.PutUpAsync();

        HttpResponseMessage[] answers = await Task.WhenAll(
            ada.PostAsync("/api/v1/round/today/seen", new { jar = 1, what = "Film" }),
            jonah.PostAsync("/api/v1/round/today/seen", new { jar = 1, what = "BrineLow" }),
            ada.PostAsync("/api/v1/round/today/taste", new { jar = 1, what = "NotYet" }),
            jonah.PostAsync("/api/v1/round/today/taste", new { jar = 1, what = "Nearly" }));

        Assert.All(answers, answer => Assert.Equal(HttpStatusCode.OK, answer.StatusCode));
        List<Observation> kept = (await JarAsync(kitchen)).Observations;
        Assert.Equal(["Ada Film", "Jonah BrineLow"], kept.OfType<Sighting>().Select(each => $"{each.By} {each.Kind}").Order());
        Assert.Equal(["Ada NotYet", "Jonah Nearly"], kept.OfType<Taste>().Select(each => $"{each.By} {each.Verdict}").Order());
    }

    [Theory]
    [InlineData("seen", "Film")]
    [InlineData("taste", "NotYet")]
    [InlineData("stage", "Cold")]
    public async Task Answer_SentAgainWithItsKey_IsFiledOnce(string what, string said)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        await ada.PutUpAsync();
        ada.Http.DefaultRequestHeaders.Add("Idempotency-Key", Guid.CreateVersion7().ToString());
        var body = new { jar = 1, what = said };

        HttpResponseMessage first = await ada.PostAsync($"/api/v1/round/today/{what}", body);
        // Over midnight it is another day, and the key alone says that it is the same answer.
        kitchen.Clock.AdjustTime(kitchen.Clock.GetUtcNow().AddDays(1));
        HttpResponseMessage again = await ada.PostAsync($"/api/v1/round/today/{what}", body);

        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (first.StatusCode, again.StatusCode));
        Assert.Equal(1, (await first.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("filed").GetInt32());
        Assert.Equal(0, (await again.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("filed").GetInt32());
        Assert.Single((await JarAsync(kitchen)).Observations);
    }

    [Theory]
    [InlineData("seen", "Film")]
    [InlineData("taste", "Right")]
    [InlineData("stage", "Cold")]
    public async Task Answer_ForAJarThrownOut_IsRefusedAndNothingIsFiled(string what, string said)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        await ada.PutUpAsync();
        await ada.PostAsync("/api/v1/round/today/stage", new { jar = 1, what = "ThrownOut", note = "fuzz on top" });

        HttpResponseMessage answer = await ada.PostAsync($"/api/v1/round/today/{what}", new { jar = 1, what = said });

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.Contains("Enter a jar that is kept: this one is thrown out.", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Single((await JarAsync(kitchen)).Observations);
    }

    private static async Task<Jar> JarAsync(RunningKitchen kitchen) =>
        (await kitchen.Services.GetRequiredService<IJarBook>().FindAsync(1, CancellationToken.None))!;
}
