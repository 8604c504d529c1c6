using System.Globalization;
using System.Net;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FermentWatch.TestKit;
using NodaTime;
using NodaTime.Text;
using Host = FermentWatch.TestKit.TestHost;

namespace FermentWatch.Scenario.Tests;

/// <summary>
/// Thirty days of an invented household (tests/scenario/household.txt) through the real doors: mosquitto_pub, command line,
/// HTTP in, a real webhook receiver out. Mornings, forecasts and pages are held against golden texts, which were read and
/// approved by eye; FERMENTWATCH_APPROVE=1 writes them anew.
/// </summary>
public sealed partial class GoldenHouseholdTests
{
    /// <summary>A tired parent reads this many words a second aloud (common practice, no source).</summary>
    private const double WordsPerSecond = 2.75;

    private const double LongestReadingSeconds = 15;

    [Fact]
    public async Task ThirtyDays_MorningsForecastsAndPages_AreAsApproved()
    {
        using var folder = new TemporaryFolder();
        string[] lines = [.. (await File.ReadAllLinesAsync(Path.Combine(Golden.Folder, "household.txt")))
            .Where(line => line.Length > 0 && line[0] != '#')];
        await using var receiver = await Receiver.StartAsync();
        await using Host host = await Host.StartAsync(folder.Path, At(lines[0]) - Duration.FromMinutes(10));
        using KitchenClient mira = await KitchenClient.SignInAsync(host, "Mira");
        var devices = new Dictionary<string, Device>();
        foreach (string name in (string[])["counter", "cellar", "fridge"])
            devices[name] = await Device.AddAsync(host, name);
        await mira.PutAsync("/api/v1/household",
            new { name = "Number Nine", time_zone = "Europe/Vienna", temperature_unit = "Celsius", mass_unit = "Kilogram", round_at = "07:00",
            evening_at = "19:00", ph_tool = "Meter" });
        Assert.Equal(HttpStatusCode.Created,
            (await mira.PostAsync("/api/v1/notice-routes",
            new { person = "Mira", channel = "Webhook", address = receiver.Address, secret = "kitchen" })).Status);
        // Places are made with the first jar that names one; the sensors are given theirs after it.
        await mira.PostAsync("/api/v1/places", new { name = "kitchen counter", typical = "Usual", shelf_order = "1" });
        await mira.PostAsync("/api/v1/places", new { name = "cellar", typical = "Cellar", shelf_order = "2" });
        await mira.PostAsync("/api/v1/places", new { name = "refrigerator", typical = "ColdStore", shelf_order = "3" });

        var golden = new Golden();
        int day = 0;
        foreach (string line in lines)
        {
            await host.ToAsync(At(line));
            string[] words = line.Split(' ', 4);
            if (words[1] == "morning")
                await MorningAsync(golden, ++day, receiver, mira);
            else
                await Entry.DoAsync(words, devices, mira);
        }
        Assert.Equal(30, day);
        golden.Settle();
    }

    private static async Task MorningAsync(Golden golden, int day, Receiver receiver, KitchenClient mira)
    {
        (string title, string text) = receiver.TakeRound();
        int spoken = $"{title} {text}".Split([' ', '\n', ':', ',', '/'], StringSplitOptions.RemoveEmptyEntries).Length;
        Assert.True(spoken / WordsPerSecond < LongestReadingSeconds, $"day {day}: {spoken} words\n{title}\n{text}");
        Assert.DoesNotMatch(Safety(), title + text);
        golden.Hold($"mornings/day-{day:00}.txt", $"{title}\n{text}\n");
        golden.Hold($"mornings/day-{day:00}-jars.txt", await JarsAsync(mira));
        if (day is 2 or 8 or 15 or 30)
            foreach (string page in (string[])["", "jars/1", "jars/2"])
                golden.Hold($"pages/day-{day:00}-{(page.Length == 0 ? "first" : page.Replace('/', '-'))}.txt",
                    Text(await mira.PageAsync("/" + page)));
    }

    private static async Task<string> JarsAsync(KitchenClient mira)
    {
        var lines = new StringBuilder();
        foreach (JsonElement jar in (await mira.GetAsync("/api/v1/jars")).EnumerateArray())
        {
            JsonElement days = jar.GetProperty("sour_enough");
            string quantiles = days.ValueKind == JsonValueKind.Null ? "none"
                : string.Join(" / ", days.EnumerateObject()
                    .Select(each => each.Value.ValueKind == JsonValueKind.Null ? "-"
                    : each.Value.GetDouble().ToString("0.000", CultureInfo.InvariantCulture)));
            lines.Append(CultureInfo.InvariantCulture, $"{jar.GetProperty("number").GetInt32()} {jar.GetProperty("name").GetString()}, "
                + $"{jar.GetProperty("place").GetString()}: {jar.GetProperty("sour_enough_words").GetString()}\n");
            lines.Append(CultureInfo.InvariantCulture, $"  days {quantiles}; acid line "
                + $"{jar.GetProperty("acid_line").GetProperty("state").GetString()}; next: {jar.GetProperty("next_step").GetString()}\n");
        }
        return lines.ToString();
    }

    /// <summary>What a person reads of a page, block by block.</summary>
    internal static string Text(string html)
    {
        IElement main = new HtmlParser().ParseDocument(html).QuerySelector("main")!;
        foreach (IElement unread in main.QuerySelectorAll("svg, style, script, select, input, table, .what").ToList())
            unread.Remove();
        var blocks = main.QuerySelectorAll("h1, h2, h3, p, li, dt, dd, label, button, summary, figcaption, a")
            .Where(block => block.QuerySelector("p, li, a, button") is null);
        var texts = blocks.Select(block => Spaces().Replace(block.TextContent, " ").Trim()).Where(text => text.Length > 0).ToList();
        // A row is a list item and the label or link that fills it.
        return string.Join('\n', texts.Where((text, i) => i == 0 || text != texts[i - 1])) + "\n";
    }

    private static Instant At(string line) => InstantPattern.ExtendedIso.Parse(line.Split(' ')[0]).GetValueOrThrow();

    [GeneratedRegex(@"\bsafe(ly|ty)?\b", RegexOptions.IgnoreCase)]
    private static partial Regex Safety();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
