using FermentWatch.Web;
using FermentWatch.Web.Gates;
using Microsoft.AspNetCore.Http;

namespace FermentWatch.Service.Tests.Pages;

public class PagesInTurnTests
{
    [Fact]
    public async Task PassAsync_MorePagesThanMayWait_AreAskedToComeAgainAndTheOthersAreMadeInTurn()
    {
        using var pages = new PagesInTurn(new WebOptions { MaxPagesAtOnce = 1, MaxPagesWaiting = 1 });
        var made = new TaskCompletionSource();
        int making = 0;
        Task MakeAsync(HttpContext _)
        {
            making++;
            return made.Task;
        }

        Task first = pages.PassAsync(Request("GET", "/jars"), MakeAsync), second = pages.PassAsync(Request("GET", "/"), MakeAsync);
        HttpContext third = Request("GET", "/sensors");
        await pages.PassAsync(third, MakeAsync);

        Assert.Equal(1, making);
        Assert.Equal((503, "2"), (third.Response.StatusCode, third.Response.Headers.RetryAfter.ToString()));
        third.Response.Body.Position = 0;
        Assert.Equal(
            "Too many pages are asked for at this moment. Nothing is lost; try again in a few seconds.",
            await new StreamReader(third.Response.Body).ReadToEndAsync());
        made.SetResult();
        await Task.WhenAll(first, second).WaitAsync(TimeSpan.FromMinutes(3));
        Assert.Equal(2, making);
    }

    [Theory]
    [InlineData("POST", "/jars/1/taste")]
    [InlineData("GET", "/healthz/live")]
    public async Task PassAsync_WhatPeopleEnterAndTheSignOfLife_WaitForNoPage(string method, string path)
    {
        using var pages = new PagesInTurn(new WebOptions { MaxPagesAtOnce = 1, MaxPagesWaiting = 1 });
        var made = new TaskCompletionSource();
        Task held = pages.PassAsync(Request("GET", "/"), _ => made.Task);
        HttpContext request = Request(method, path);
        await pages.PassAsync(request, _ => Task.CompletedTask).WaitAsync(TimeSpan.FromMinutes(3));
        Assert.Equal(200, request.Response.StatusCode);
        made.SetResult();
        await held;
    }

    private static DefaultHttpContext Request(string method, string path)
    {
        var context = new DefaultHttpContext();
        (context.Request.Method, context.Request.Path, context.Response.Body) = (method, path, new MemoryStream());
        return context;
    }
}
