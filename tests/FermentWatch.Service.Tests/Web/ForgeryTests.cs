using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using FermentWatch.RunningTests;
using FermentWatch.Service.Tests.Api;

namespace FermentWatch.Service.Tests.Web;

/// <summary>What a page elsewhere could send in the name of somebody who is signed in.</summary>
public sealed class ForgeryTests
{
    [Fact]
    public async Task ApiWrite_WithoutTheHeader_Is400AndSaysWhatToSend()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        ada.Http.DefaultRequestHeaders.Remove("X-FermentWatch");
        foreach (string path in new[] { "/api/v1/calendar", "/api/v1/jars", "/api/v1/round/today/all-well", "/api/v1/nothing" })
        {
            HttpResponseMessage answer = await ada.PostAsync(path, new { });
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
            JsonElement problem = await answer.Content.ReadFromJsonAsync<JsonElement>();
            Assert.Equal(("The header X-FermentWatch is missing.", "application/problem+json"),
                (problem.GetProperty("title").GetString(), answer.Content.Headers.ContentType!.MediaType));
            Assert.Contains("X-FermentWatch: 1", problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
        }
        Assert.Equal(HttpStatusCode.OK, (await ada.Http.GetAsync("/api/v1/jars")).StatusCode);
    }

    [Theory]
    [InlineData("/household")]
    [InlineData("/sign-out")]
    [InlineData("/sensors/take")]
    [InlineData("/photos/00000000-0000-0000-0000-000000000001")]
    public async Task Form_WithoutItsToken_Is400WithAPageThatSaysWhatToDo(string path)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await Script.SignedInAsync(kitchen);
        HttpResponseMessage answer = await ada.Http.PostAsync(path, new FormUrlEncodedContent([new("_handler", "household")]));
        Assert.Equal((HttpStatusCode.BadRequest, "text/html"), (answer.StatusCode, answer.Content.Headers.ContentType!.MediaType));
        Assert.Contains("load the page again", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }
}
