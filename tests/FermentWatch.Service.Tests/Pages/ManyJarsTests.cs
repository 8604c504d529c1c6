using System.Net;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FermentWatch.RunningTests;
using FermentWatch.Service.Tests.Api;

namespace FermentWatch.Service.Tests.Pages;

/// <summary>More jars on a shelf than anybody scrolls past: each page has an end, and nothing is out of reach.</summary>
public class ManyJarsTests
{
    private static readonly int[] FirstHundred = [.. Enumerable.Range(1, 100)];

    [Fact]
    public async Task ShelfOfAHundredAndTwenty_IsAnsweredAHundredAtATime()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await FilledAsync(kitchen);

        IElement board = await BoardAsync(ada);
        Assert.Equal(FirstHundred, Rows(board));
        Assert.Equal("100 of 120. The next come when these are answered.", board.QuerySelector(".board-more")!.TextContent);
        Assert.Equal(string.Join(',', FirstHundred), board.QuerySelector("[name='Input.Jars']")!.GetAttribute("value"));

        await ada.PostAsync("/api/v1/round/today/all-well", new { except = Enumerable.Range(101, 20), opened = false });
        Assert.Equal(Enumerable.Range(101, 20).Concat(Enumerable.Range(1, 80)), Rows(await BoardAsync(ada)));

        await ada.PostAsync("/api/v1/round/today/all-well", new { except = FirstHundred, opened = false });
        Assert.Equal("100 of 120. The others are found by number on their own page.",
            (await BoardAsync(ada)).QuerySelector(".board-more")!.TextContent);
    }

    [Fact]
    public async Task WeekSheet_OfAHundredAndTwenty_IsTwoSheets()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        using Script ada = await FilledAsync(kitchen);

        IElement first = await PageAsync(ada, "/week-sheet"), second = await PageAsync(ada, "/week-sheet?sheet=2");
        Assert.Equal(FirstHundred, SheetRows(first));
        Assert.Equal(Enumerable.Range(101, 20), SheetRows(second));
        Assert.Equal(["Sheet 1", "Sheet 2"], first.QuerySelectorAll("nav[aria-label=Sheets] a").Select(link => link.TextContent));
        Assert.Equal("Sheet 2", second.QuerySelector("nav[aria-label=Sheets] a[aria-current]")!.TextContent);
        Assert.Equal(SheetRows(second), SheetRows(await PageAsync(ada, "/week-sheet?sheet=99")));
    }

    private static async Task<Script> FilledAsync(RunningKitchen kitchen)
    {
        Script ada = await Script.SignedInAsync(kitchen);
        // Of something else nothing is forecast, so that so many jars are quickly there.
        foreach (string howMany in (string[])["100", "20"])
        {
            var answer = await ada.PutUpAsync(("what", "something else"), ("its_name", "samphire"), ("how_many", howMany));
            Assert.True(answer.StatusCode == HttpStatusCode.Created, await answer.Content.ReadAsStringAsync());
        }
        kitchen.Clock.Advance(TimeSpan.FromDays(1));
        await kitchen.SettleAsync();
        return ada;
    }

    private static async Task<IElement> BoardAsync(Script ada) => (await PageAsync(ada, "/")).QuerySelector("form.board")!;

    private static async Task<IElement> PageAsync(Script ada, string path) =>
        new HtmlParser().ParseDocument(await ada.Http.GetStringAsync(path)).QuerySelector("main")!;

    private static IEnumerable<int> Rows(IElement board) =>
        board.QuerySelectorAll("[name='Input.Except']").Select(box => int.Parse(box.GetAttribute("value")!, null));

    private static IEnumerable<int> SheetRows(IElement page) =>
        page.QuerySelectorAll("th[scope=row] strong").Select(number => int.Parse(number.TextContent, null));
}
