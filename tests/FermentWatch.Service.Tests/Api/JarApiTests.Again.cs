using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using FermentWatch.RunningTests;

namespace FermentWatch.Service.Tests.Api;

public partial class JarApiTests
{
    [Fact]
    public async Task PutUp_SameKeyTwice_PutsUpOnce()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        script.Http.DefaultRequestHeaders.Add("Idempotency-Key", Guid.CreateVersion7().ToString());

        HttpResponseMessage[] answers = await Task.WhenAll(script.PutUpAsync(), script.PutUpAsync());

        Assert.All(answers, answer => Assert.Equal(HttpStatusCode.Created, answer.StatusCode));
        Assert.Single((await script.GetAsync("/api/v1/jars")).EnumerateArray());
    }

    [Theory]
    [InlineData("{\"what\":", "At $.what: there is no such field, its value is of another kind, or the text breaks off.")]
    [InlineData("[1]", "It is no JSON of an object from line 1, byte 2 on.")]
    [InlineData("{\"colour\":\"green\"}", "At $.colour: there is no such field, its value is of another kind, or the text breaks off.")]
    [InlineData("{\"what\":5}", "At $.what: there is no such field, its value is of another kind, or the text breaks off.")]
    [InlineData("", "Nothing was sent: JSON of one object would be right.")]
    [InlineData("{}", "'twice' is no key of the kind that the description has.", "twice")]
    public async Task PutUp_WhatCannotBeRead_Answers400AndWhere(string body, string where, string? key = null)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        using var request = new HttpRequestMessage(HttpMethod.Post,
            "/api/v1/jars") { Content = new StringContent(body, System.Text.Encoding.UTF8, "application/json") };
        if (key is not null)
            request.Headers.Add("Idempotency-Key", key);

        HttpResponseMessage answer = await script.Http.SendAsync(request);

        Assert.Equal((HttpStatusCode.BadRequest, "application/problem+json"), (answer.StatusCode, answer.Content.Headers.ContentType?.MediaType));
        Assert.Equal(where, System.Text.Json.JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement.GetProperty("detail")
            .GetString());
    }

    [Fact]
    public async Task SameKeyWithAnotherBody_PutUpPhTasteStageAndMove_Answers409AndChangesNothing()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);
        (string Path, object First, object Other)[] calls =
        [
            ("/api/v1/jars/1/ph", new { ph = "3.9", method = "meter" }, new { ph = "4.9", method = "meter" }),
            ("/api/v1/round/today/taste", new { jar = 1, what = "NotYet" }, new { jar = 1, what = "Nearly" }),
            ("/api/v1/jars/1/place", new { place = "cellar" }, new { place = "refrigerator" }),
            ("/api/v1/round/today/stage", new { jar = 1, what = "Cold" }, new { jar = 1, what = "Finished" }),
        ];
        await script.PutUpAsync(("packed_at", Days(kitchen, -2)));
        foreach ((string path, object first, object other) in calls)
        {
            script.Http.DefaultRequestHeaders.Remove("Idempotency-Key");
            script.Http.DefaultRequestHeaders.Add("Idempotency-Key", Guid.CreateVersion7().ToString());
            Assert.True((await script.PostAsync(path, first)).IsSuccessStatusCode, path);
            Assert.True((await script.PostAsync(path, first)).IsSuccessStatusCode, path);
            string before = (await script.GetAsync("/api/v1/jars/1")).GetProperty("observations").GetRawText();
            Assert.Equal(HttpStatusCode.Conflict, (await script.PostAsync(path, other)).StatusCode);
            Assert.Equal(before, (await script.GetAsync("/api/v1/jars/1")).GetProperty("observations").GetRawText());
        }
        await script.PutUpAsync(("how_much", "600 g"));
        Assert.Equal(HttpStatusCode.Conflict, (await script.PutUpAsync(("how_much", "900 g"))).StatusCode);
        Assert.Equal(2, (await script.GetAsync("/api/v1/jars")).GetArrayLength());
    }

    [Fact]
    public async Task PutUp_SameKeyAfterARestart_IsTheSameJarsAlsoWhenOneWasPutRight()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("fermentwatch-again-");
        string key = Guid.CreateVersion7().ToString();
        await using (RunningKitchen first = await RunningKitchen.StartAsync(("Storage:Folder", folder.FullName)))
        {
            using Script script = await Script.SignedInAsync(first);
            script.Http.DefaultRequestHeaders.Add("Idempotency-Key", key);
            await script.PutUpAsync(("how_much", "600 g"), ("how_many", "2"));
            await script.PutAsync("/api/v1/jars/2", new { how_much = "700 g" });
        }

        await using (RunningKitchen second = await RunningKitchen.StartAsync(("Storage:Folder", folder.FullName)))
        {
            using Script script = await Script.SignedInAsync(second, "mira", "Mira");
            script.Http.DefaultRequestHeaders.Add("Idempotency-Key", key);
            HttpResponseMessage again = await script.PutUpAsync(("how_much", "600 g"), ("how_many", "2"));
            Assert.Equal(HttpStatusCode.Created, again.StatusCode);
            Assert.Equal([1, 2], (await again.Content.ReadFromJsonAsync<JsonElement>()).EnumerateArray()
                .Select(jar => jar.GetProperty("number").GetInt32()));
            Assert.Equal(HttpStatusCode.Conflict, (await script.PutUpAsync(("how_much", "900 g"), ("how_many", "2"))).StatusCode);
            Assert.Equal(2, (await script.GetAsync("/api/v1/jars")).GetArrayLength());
        }
        folder.Delete(recursive: true);
    }

    [Fact]
    public async Task PutUp_Odd_AnswersTheQuestionAndTakesWhatIsInsistedOn()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script script = await Script.SignedInAsync(kitchen);

        HttpResponseMessage asked = await script.PutUpAsync(("how_much", "2 kg"));

        Assert.Equal(HttpStatusCode.UnprocessableEntity, asked.StatusCode);
        JsonElement question = Assert.Single((await asked.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("questions").EnumerateArray());
        Assert.EndsWith("200 g?", question.GetProperty("question").GetString(), StringComparison.Ordinal);
        Assert.Empty((await script.GetAsync("/api/v1/jars")).EnumerateArray());
        HttpResponseMessage sure = await script.PostAsync("/api/v1/jars",
            new { what = "cabbage", how_much = "2 kg", salt = "2 %", vessel = "1 l", place = "kitchen counter", it_is_right = true });
        Assert.Equal(HttpStatusCode.Created, sure.StatusCode);
    }
}
