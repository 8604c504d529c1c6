using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using SkiaSharp;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace FermentWatch.Browser.Tests;

/// <summary>Labels as they are printed: where they lie on the sheet, what stands on them, and their codes read back from the picture.</summary>
public sealed class LabelTests(Chromium chromium) : IClassFixture<Chromium>
{
    /// <summary>A folder of their own: another test counts what lies in its own.</summary>
    private static readonly string Pictures = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, "pictures-labels")).FullName;

    private const double MillimetresPerPixel = 25.4 / 96;

    /// <summary>Paper, and where the first and the last label of a whole sheet begin, mm; worked out from the measures of the sheets by
    /// hand.</summary>
    public static TheoryData<string, int, (double Width, double Height) , (double X, double Y), (double X, double Y)> Sheets => new()
    {
        { "a4-70x37", 24, (210, 297), (0, 0.5), (140, 259.5) },
        { "a4-99x38", 14, (210, 297), (4.65, 15.15), (106.25, 243.75) },
        { "letter-67x25", 30, (215.9, 279.4), (4.7, 12.7), (144.5, 241.3) },
        { "letter-102x51", 10, (215.9, 279.4), (4, 12.7), (110.4, 215.9) },
    };

    [Theory]
    [MemberData(nameof(Sheets))]
    public async Task Sheet_FullOfLabels_LiesWhereItIsCutAndIsOnePageOfItsPaper(
        string sheet, int labels, (double Width, double Height) paper, (double X, double Y) first, (double X, double Y) last)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        IPage page = await FilledAsync(kitchen, labels);
        await page.GotoAsync($"{kitchen.Address}/labels?sheet={sheet}");
        Assert.Equal(labels, await page.Locator("article.label").CountAsync());

        (double X, double Y) origin = await CornerAsync(page.Locator(".sheet"));
        await NearAsync(first, origin, page.Locator("article.label").First);
        await NearAsync(last, origin, page.Locator("article.label").Last);
        string[] cutOff = await page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll('.label')].filter(each => each.scrollHeight > each.clientHeight + 1 || each.scrollWidth > "
            + "each.clientWidth + 1).map(each => each.innerText)");
        Assert.Empty(cutOff);

        string pdf = Encoding.Latin1.GetString(
            await page.PdfAsync(new() { PreferCSSPageSize = true, Path = Path.Combine(Pictures, $"labels-{sheet}.pdf") }));
        Match box = Assert.Single(Regex.Matches(pdf, @"/MediaBox \[0 0 ([0-9.]+) ([0-9.]+)\]"));
        Assert.Equal(paper.Width / 25.4 * 72, double.Parse(box.Groups[1].Value, null), 1.0);
        Assert.Equal(paper.Height / 25.4 * 72, double.Parse(box.Groups[2].Value, null), 1.0);
    }

    [Fact]
    public async Task Label_OfEachJar_SaysWhatIsInItAndItsCodeOpensIt()
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        IPage page = await FilledAsync(kitchen, 2);
        await page.PutUpAsync(kitchen, "celery", "600 g", "2.5 %", "cellar", daysAgo: 3);
        await page.MeasureAsync(kitchen, 3, "4.2", "Meter");
        foreach (string sheet in new[] { "plain", "a4-70x37", "a4-99x38", "letter-67x25", "letter-102x51" })
        {
            await page.GotoAsync($"{kitchen.Address}/labels?jars=1,%203&sheet={sheet}&taken=3");
            Assert.Equal(3, await page.Locator(".label.taken").CountAsync());
            string label = await page.Locator("article.label").Last.InnerTextAsync();
            foreach (string part in new[] { "3", "Celery", "packed 1", "taste from ", "salt 2.5 %, under a leaf, vented lid", "pH 4.2 by meter, ",
                "contains celery" })
                Assert.Contains(part, label, StringComparison.Ordinal);
            Assert.Equal($"{kitchen.Address}/jars/1", await ReadAsync(page.Locator("article.label .qr").First));
            Assert.Equal($"{kitchen.Address}/jars/3", await ReadAsync(page.Locator("article.label .qr").Last));
            await page.ScreenshotAsync(new() { Path = Path.Combine(Pictures, $"labels-{sheet}.png"), FullPage = true });
        }
    }

    [Theory]
    [InlineData("3, x", "jars: 3, x cannot be used. Enter numbers of jars, such as 3, 5 to 8.")]
    [InlineData("99", "jars: 99 cannot be used. Enter numbers of jars that are kept.")]
    [InlineData("8-5", "jars: 8-5 cannot be used. Enter numbers of jars, such as 3, 5 to 8.")]
    public async Task Numbers_ThatAreNone_AreAskedForAgain(string typed, string words)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        IPage page = await FilledAsync(kitchen, 1);
        await page.GotoAsync($"{kitchen.Address}/labels?jars={Uri.EscapeDataString(typed)}");
        Assert.Contains(words["jars: ".Length..], await page.InnerTextAsync(".wrong-box"), StringComparison.Ordinal);
        Assert.Equal(0, await page.Locator(".label").CountAsync());
    }

    private async Task<IPage> FilledAsync(RunningKitchen kitchen, int jars)
    {
        IBrowserContext context =
            await chromium.NewContextAsync(
            new() { JavaScriptEnabled = true, ViewportSize = new() { Width = 1280, Height = 900 }, DeviceScaleFactor = 3 });
        IPage page = await context.NewPageAsync();
        await page.SetUpAsync(kitchen);
        await page.PutUpAsync(kitchen, "cabbage", "900 g", "2.25 %", "kitchen counter", howMany: jars, daysAgo: 9);
        return page;
    }

    private static async Task NearAsync((double X, double Y) expected, (double X, double Y) origin, ILocator label)
    {
        (double x, double y) = await CornerAsync(label);
        Assert.Equal(expected.X, x - origin.X, 0.4);
        Assert.Equal(expected.Y, y - origin.Y, 0.4);
    }

    private static async Task<(double X, double Y)> CornerAsync(ILocator element)
    {
        LocatorBoundingBoxResult box = (await element.BoundingBoxAsync())!;
        return (box.X * MillimetresPerPixel, box.Y * MillimetresPerPixel);
    }

    /// <summary>What a camera reads of a code. Like a hand that holds a phone it looks from more than one distance: of one picture in two
    /// hundred the reader makes nothing, whatever the code (2 of 800 codes drawn here for it; none of them from all three).</summary>
    private static async Task<string> ReadAsync(ILocator code)
    {
        using SKBitmap picture = SKBitmap.Decode(await code.ScreenshotAsync());
        return new[] { 1, 0.75, 0.5 }.Select(scale => ReadAt(scale, picture)).OfType<string>().FirstOrDefault("not read");
    }

    private static string? ReadAt(double scale, SKBitmap picture)
    {
        var size = new SKImageInfo((int)(picture.Width * scale), (int)(picture.Height * scale));
        using SKBitmap seen = picture.Resize(size, new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
        byte[] rgb = [.. seen.Pixels.SelectMany(pixel => new[] { pixel.Red, pixel.Green, pixel.Blue })];
        return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(rgb, seen.Width, seen.Height))))?.Text;
    }
}
