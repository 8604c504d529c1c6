using System.Globalization;
using System.Net;
using System.Text.Json;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using FermentWatch.TestKit;
using NodaTime;
using Host = FermentWatch.TestKit.TestHost;

namespace FermentWatch.Scenario.Tests;

/// <summary>
/// A household's first three weeks by the steered clock, as golden mornings and pages under tests/scenario/weeks: twenty healthy
/// jars with nothing to measure with, the same with a meter (in the long run: every reading makes a forecast dear), and one jar of
/// each trouble. What is told in the evenings: ThreeWeeksTextsTests. FERMENTWATCH_APPROVE=1 writes them anew.
/// </summary>
public sealed class ThreeWeeksTests
{
    /// <summary>Everything that is shown in the colour of a warning.</summary>
    private const string Orange = ".now-box:not(.calm), .chip-rising, .flag";

    private const int Days = 21;
    private const int MostWords = 40;

    private static readonly LocalDate First = new(2026, 11, 1);

    private readonly Golden _golden = new();

    [Fact]
    public async Task TwentyHealthyJars_NothingToMeasureWith_AreThreeCalmWeeks()
    {
        await using Weeks weeks = await Weeks.StartAsync("Nothing");
        await weeks.PutUpTwentyAsync();
        var tasting = new List<int>();
        for (int day = 1; day <= Days; day++)
        {
            string morning = await weeks.MorningAsync(day);
            AssertCalm(morning);
            Assert.DoesNotContain("pH", morning, StringComparison.Ordinal);
            tasting.Add(Weeks.Asks(morning));
            await weeks.AssertNoOrangeAsync();
            if (day is 1 or 7 or 15 or 21)
                await weeks.HoldPagesAsync(_golden, "nothing", day, "", "jars", "jars/1");
            await weeks.WellAsync();
        }
        Assert.All(Enumerable.Range(0, Days - 6), from => Assert.InRange(tasting.Skip(from).Take(7).Sum(), 0, 3));
        Assert.Contains(tasting, asks => asks > 0);
        _golden.Hold("weeks/nothing.txt", weeks.Told);
        _golden.Settle();
    }

    [LongFact]
    public async Task TwentyHealthyJars_WithAMeter_AreAskedForTheirPhTogether()
    {
        await using Weeks weeks = await Weeks.StartAsync("Meter");
        await weeks.PutUpTwentyAsync();
        for (int day = 1; day <= Days; day++)
        {
            string morning = await weeks.MorningAsync(day);
            AssertCalm(morning);
            Assert.InRange(morning.Split('\n').Count(line => line.StartsWith("Measure pH", StringComparison.Ordinal)), 0, 1);
            await weeks.AssertNoOrangeAsync();
            if (day is 5 or 15)
                await weeks.HoldPagesAsync(_golden, "meter", day, "", "jars", "jars/1");
            await weeks.WellAsync();
            await weeks.MeasureAsync(Math.Max(3.6, 4.4 - (0.1 * (day - 3))));
        }
        _golden.Hold("weeks/meter.txt", weeks.Told);
        _golden.Settle();
    }

    [Fact]
    public async Task OneJarOfEachTrouble_SeenToAndWell_HasItsForecastBack()
    {
        await using Weeks weeks = await Weeks.StartAsync("Nothing");
        await weeks.PutUpAsync("cabbage", 6);
        (int Jar, string Seen, string? Done)[] troubles =
            [(1, "PiecesUp", "PressedUnder"), (2, "Film", "Skimmed"), (3, "BrineLow", "BrineToppedUp"), (4, "Gas", "GasLetOut"),
            (5, "FuzzOrUnsure", null), (6, "OffSmell", null)];
        for (int day = 1; day <= 14; day++)
        {
            await weeks.MorningAsync(day);
            if (day == 8)
                await weeks.HoldPagesAsync(_golden, "trouble", day, "", "jars", "jars/1", "jars/3", "jars/5");
            if (day == 9)
            {
                foreach ((int jar, _, string? done) in troubles.Where(each => each.Done is not null))
                    await weeks.PostAsync("/api/v1/round/today/handled", new { jar, what = done });
                // Entries of one instant have no order.
                await weeks.LaterAsync(day);
            }
            if (day == 12)
                await weeks.HoldPagesAsync(_golden, "trouble", day, "", "jars", "jars/1", "jars/3", "jars/5");
            if (day is not (7 or 8))
                await weeks.WellAsync();
            if (day == 7)
                foreach ((int jar, string seen, _) in troubles)
                    await weeks.PostAsync("/api/v1/round/today/seen", new { jar, what = seen });
            bool[] withdrawn = await weeks.WithdrawnAsync();
            bool small = day is >= 7 and < 11, big = day >= 7;
            Assert.Equal([small, small, small, false, big, big], withdrawn);
        }
        _golden.Hold("weeks/trouble.txt", weeks.Told);
        _golden.Settle();
    }

    private static void AssertCalm(string morning)
    {
        int words = morning.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries).Length;
        Assert.True(words < MostWords, $"{words} words:\n{morning}");
    }

    /// <summary>A household, its doors and what it was told.</summary>
    private sealed class Weeks : IAsyncDisposable
    {
        private readonly TemporaryFolder _folder = new();
        private readonly System.Text.StringBuilder _told = new();
        private Receiver _receiver = null!;
        private Host _host = null!;
        private KitchenClient _mira = null!;

        public string Told => _told.ToString();

        public static async Task<Weeks> StartAsync(string tool)
        {
            var weeks = new Weeks { _receiver = await Receiver.StartAsync() };
            weeks._host = await Host.StartAsync(weeks._folder.Path, At(0, 15));
            weeks._mira = await KitchenClient.SignInAsync(weeks._host, "Mira");
            await weeks._mira.PutAsync("/api/v1/household",
                new { name = "Number Nine", time_zone = "UTC", temperature_unit = "Celsius", mass_unit = "Kilogram", round_at = "07:00",
                evening_at = "19:00", ph_tool = tool });
            await weeks.PostAsync("/api/v1/places", new { name = "kitchen counter", typical = "Usual", shelf_order = "1" });
            Assert.Equal(HttpStatusCode.Created,
                (await weeks._mira.PostAsync("/api/v1/notice-routes",
                new { person = "Mira", channel = "Webhook", address = weeks._receiver.Address, secret = "kitchen" })).Status);
            return weeks;
        }

        public async Task PutUpTwentyAsync()
        {
            await PutUpAsync("cabbage", 7);
            await PutUpAsync("red cabbage", 7);
            await PutUpAsync("carrot", 6);
        }

        public async Task PutUpAsync(string what, int jars)
        {
            (HttpStatusCode status, string body) = await _mira.PostAsync("/api/v1/jars", new
            {
                what, how_much = "700g", salt = "2.25%", vessel = "1l", place = "kitchen counter", target = "Sour", cover = "Weight", lid = "Vented",
                how_many = jars.ToString(CultureInfo.InvariantCulture), added_water = what == "carrot" ? "300g" : "",
            });
            Assert.True(status == HttpStatusCode.Created, body);
        }

        /// <summary>The morning's message; what else came since the last one is noted with it.</summary>
        public async Task<string> MorningAsync(int day)
        {
            // What yesterday's entries bring is told yesterday.
            await _host.SettleAsync();
            await _host.JumpAsync(At(day, 7));
            var got = _receiver.TakeAll();
            _told.Append(CultureInfo.InvariantCulture, $"== day {day}\n");
            // What comes at once comes in any order.
            foreach ((string id, string title, string text) in got.OrderBy(each => each.Id.Split('/')[0] == "round" ? 0 : 1)
                .ThenBy(each => each.Title, StringComparer.Ordinal))
                _told.Append(CultureInfo.InvariantCulture, $"[{id.Split('/')[0]}] {title}\n{text}\n\n");
            (string _, string heading, string body) = got.Single(each => each.Id.StartsWith("round/", StringComparison.Ordinal));
            return $"{heading}\n{body}";
        }

        /// <summary>An hour after the morning.</summary>
        public Task LaterAsync(int day) => _host.JumpAsync(At(day, 8));

        /// <summary>How many jars a morning asks to taste.</summary>
        public static int Asks(string morning) => morning.Split('\n').Where(line => line.StartsWith("Taste: ", StringComparison.Ordinal))
            .Sum(line => line.Split("(for").Length - 1);

        public async Task WellAsync() => await PostAsync("/api/v1/round/today/all-well", new { except = Array.Empty<int>(), opened = false });

        public async Task MeasureAsync(double ph)
        {
            foreach (JsonElement jar in (await _mira.GetAsync("/api/v1/round/today")).GetProperty("jars").EnumerateArray())
                if (jar.GetProperty("look_fors").EnumerateArray().Any(each => each.GetString() == "MeasurePh"))
                    await PostAsync($"/api/v1/jars/{jar.GetProperty("number").GetInt32()}/ph",
                        new { ph = ph.ToString("0.00", CultureInfo.InvariantCulture), method = "meter", checked_in_buffer = true,
                        pale_brine = true }, HttpStatusCode.Created);
        }

        public async Task<bool[]> WithdrawnAsync() =>
            [.. (await _mira.GetAsync("/api/v1/jars")).EnumerateArray()
                .Select(jar => jar.GetProperty("sour_enough").ValueKind == JsonValueKind.Null)];

        public async Task AssertNoOrangeAsync()
        {
            foreach (string page in (string[])["/", "/jars", "/jars/1", "/jars/8", "/jars/20"])
            {
                IElement main = new HtmlParser().ParseDocument(await _mira.PageAsync(page)).QuerySelector("main")!;
                Assert.True(main.QuerySelector(Orange) is null, $"{page}: {main.QuerySelector(Orange)?.TextContent}");
            }
        }

        public async Task HoldPagesAsync(Golden golden, string name, int day, params string[] pages)
        {
            foreach (string page in pages)
                golden.Hold($"weeks/{name}-day-{day:00}-{(page.Length == 0 ? "first" : page.Replace('/', '-'))}.txt",
                    GoldenHouseholdTests.Text(await _mira.PageAsync("/" + page)));
        }

        public async Task PostAsync(string address, object body, HttpStatusCode? expected = null)
        {
            (HttpStatusCode status, string answer) = await _mira.PostAsync(address, body);
            Assert.True(expected is { } one ? status == one : (int)status < 300, $"{address}: {status} {answer}");
        }

        public async ValueTask DisposeAsync()
        {
            _mira.Dispose();
            await _host.DisposeAsync();
            await _receiver.DisposeAsync();
            _folder.Dispose();
        }

        private static Instant At(int day, int hour) => (First.PlusDays(day) + new LocalTime(hour, 0)).InUtc().ToInstant();
    }
}
