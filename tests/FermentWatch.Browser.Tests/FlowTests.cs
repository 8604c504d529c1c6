using System.Text.RegularExpressions;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Playwright;

namespace FermentWatch.Browser.Tests;

/// <summary>
/// What a household does, each from a signed-out phone to done, counted in taps and keys, with script and without it. Signing in is three
/// taps of each and the letters of name and password; the morning round is counted in <see cref="RoundTests"/>.
/// </summary>
public sealed class FlowTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const int SignInTaps = Hand.SignInTaps;

    /// <summary>
    /// Seconds for a key, for reaching a target, and for making up one's mind before each target: S. K. Card, T. P. Moran, A. Newell,
    /// "The keystroke-level model for user performance time with interactive systems", Communications of the ACM 23(7), 1980, table I
    /// (K of a non-secretary typist, P, M), from memory. They were measured at a desk: a phone in a kitchen is slower, so it is doubled.
    /// </summary>
    private const double KeySeconds = 2 * 0.28, TapSeconds = 2 * (1.1 + 1.35);

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task PutUp_FourJarsOfCabbageForTheCellar_TakesSevenTapsFiveKeysAndBelowAMinute(bool script)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using Hand hand = await SignInAsync(kitchen, script);
        IPage page = hand.Page;
        await hand.TapAsync(Bar(page, "Put up"));
        await hand.TypeAsync(page.GetByLabel("How much in each jar"), "800g");
        await hand.TapAsync(page.Locator(".tap", new() { HasText = "2.5 %" }));
        await hand.ChooseAsync(page.GetByLabel("Where it stands"), "cellar");
        await hand.TypeAsync(page.GetByLabel("How many alike"), "4");
        await hand.TapAsync(page.GetByRole(AriaRole.Button, new() { Name = "Put up", Exact = true }));
        await page.UntilAtAsync(address => address.EndsWith("/jars?put-up=1,2,3,4", StringComparison.Ordinal));

        Assert.Equal((SignInTaps + 7, 5), (hand.Taps, hand.Keys));
        Assert.True((hand.Keys * KeySeconds) + ((hand.Taps - SignInTaps) * TapSeconds) < 60);
        IReadOnlyList<Jar> jars = await JarsAsync(kitchen);
        Assert.Equal([(0.8, 2.5), (0.8, 2.5), (0.8, 2.5), (0.8, 2.5)],
            jars.Select(jar => (jar.Portions[0].MassKilograms, jar.Salting.Percent!.Value)));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Trouble_PiecesUpSeenAndPressedUnder_TakesFourTapsWithTheGuideBetween(bool script)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using Hand hand = await SignInAsync(kitchen, script,
            page => page.PutUpAsync(kitchen, "cabbage", "800 g", "2.25 %", "cellar", howMany: 2, daysAgo: 3));
        IPage page = hand.Page;
        await hand.TapAsync(page.GetByRole(AriaRole.Checkbox, new() { Name = "Jar 2 " }));
        await hand.TapAsync(page.GetByRole(AriaRole.Radiogroup, new() { Name = "What is not well with jar 2" })
            .Locator("label", new() { HasText = "Pieces up" }));
        await hand.TapAsync(page.GetByRole(AriaRole.Button, new() { Name = script ? "All well but 2" : "All well but the ticked" }));
        await page.GetByText("Press the rest under, with clean hands").First.WaitForAsync();
        await hand.TapAsync(page.GetByRole(AriaRole.Button, new() { Name = "Pressed under" }).First);
        await page.GetByText("Written down", new() { Exact = false }).First.WaitForAsync();

        Assert.Equal((SignInTaps + 4, 0), (hand.Taps, hand.Keys));
        Assert.Equal(["Handling", "Sighting"],
            (await JarsAsync(kitchen)).Single(jar => jar.Number == 2).Standing.Select(each => each.GetType().Name).Order());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Ph_ByStripInPaleBrine_TakesSevenTapsAndThreeKeys(bool script)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using Hand hand = await SignInAsync(kitchen, script,
            page => page.PutUpAsync(kitchen, "cabbage", "800 g", "2.25 %", "cellar", daysAgo: 9));
        IPage page = hand.Page;
        await ToJarAsync(hand, 1);
        await hand.TapAsync(page.GetByRole(AriaRole.Link, new() { Name = "Enter a pH" }));
        await hand.TypeAsync(page.GetByLabel("pH", new() { Exact = true }), "3.8");
        await hand.TapAsync(page.Locator(".tap", new() { HasText = "Strip" }));
        await hand.TapAsync(page.Locator(".tap", new() { HasText = "Pale brine" }));
        await hand.TapAsync(page.GetByRole(AriaRole.Button, new() { Name = "Enter", Exact = true }));
        await page.ArriveAnsweredAsync(kitchen, 1);

        Assert.Equal((SignInTaps + 7, 3), (hand.Taps, hand.Keys));
        Assert.Equal((3.8, true),
            (await JarsAsync(kitchen))[0].Standing.OfType<PhMeasurement>().Select(each => (each.Ph, each.PaleBrine == true)).Single());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Taste_RightAndIntoTheCold_TakesFiveTapsWithTheCautionBesideIt(bool script)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using Hand hand = await SignInAsync(kitchen, script,
            page => page.PutUpAsync(kitchen, "cabbage", "800 g", "2.25 %", "cellar", daysAgo: 22));
        IPage page = hand.Page;
        await ToJarAsync(hand, 1);
        await hand.TapAsync(page.GetByRole(AriaRole.Link, new() { Name = "Taste", Exact = true }));
        await hand.TapAsync(page.GetByRole(AriaRole.Button, new() { Name = "Right" }));
        await page.GetByRole(AriaRole.Heading, new() { Name = "Where does it go?" }).WaitForAsync();
        Assert.Contains("public advice lets kraut work 3 to 6 weeks", await page.InnerTextAsync("main"), StringComparison.Ordinal);
        await hand.TapAsync(page.GetByRole(AriaRole.Button, new() { Name = "Into the cold" }));
        await page.ArriveAnsweredAsync(kitchen, 1);

        Assert.Equal((SignInTaps + 5, 0), (hand.Taps, hand.Keys));
        Assert.Equal(JarStage.Cold, (await JarsAsync(kitchen))[0].Stage);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task LookBack_OneJarBesideAnother_TakesSixTaps(bool script)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using Hand hand = await SignInAsync(kitchen, script, async page =>
        {
            await page.PutUpAsync(kitchen, "cabbage", "800 g", "2.25 %", "cellar", daysAgo: 12);
            await page.PutUpAsync(kitchen, "cabbage", "800 g", "2.25 %", "kitchen counter", daysAgo: 12);
        });
        await ToJarAsync(hand, 1);
        await hand.TapAsync(hand.Page.GetByRole(AriaRole.Link, new() { Name = "Beside another jar" }));
        await hand.Page.Locator("main h1").WaitForAsync();
        await hand.ChooseAsync(hand.Page.Locator("main select").First, new Regex("^(Jar )?2\\b"));
        await hand.TapAsync(hand.Page.GetByRole(AriaRole.Button, new() { Name = "Show" }));
        await hand.Page.UntilAtAsync(address => address.Contains("with=2", StringComparison.Ordinal));

        Assert.Equal((SignInTaps + 6, 0), (hand.Taps, hand.Keys));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task PutUp_TheSameAgainAsAJarThatWasGood_TakesFiveTapsAndNoKey(bool script)
    {
        await using RunningKitchen kitchen = await RunningKitchen.StartAsync();
        await using Hand hand = await SignInAsync(kitchen, script, async page =>
        {
            await page.PutUpAsync(kitchen, "beet", "1.3 kg", "2.5 %", "cellar", daysAgo: 30, sour: "ALittleSour");
            await page.GotoAsync(kitchen.Address + "/jars/1/correct");
            await page.GetByLabel("Salt", new() { Exact = true }).FillAsync("2.7 %");
            await page.GetByLabel("Vessel", new() { Exact = true }).FillAsync("1.7 l");
            await page.GetByLabel("Name", new() { Exact = true }).FillAsync("Beet for soup");
            await page.GetByRole(AriaRole.Button, new() { Name = "Put right" }).ClickAsync();
            await page.ArriveAnsweredAsync(kitchen, 1);
        });
        await ToJarAsync(hand, 1);
        await hand.TapAsync(hand.Page.GetByText("What went in", new() { Exact = true }));
        await hand.TapAsync(hand.Page.GetByRole(AriaRole.Link, new() { Name = "Put up the same again" }));
        await hand.TapAsync(hand.Page.GetByRole(AriaRole.Button, new() { Name = "Put up", Exact = true }));
        await hand.Page.UntilAtAsync(address => address.EndsWith("/jars/2?new=1", StringComparison.Ordinal));

        Assert.Equal((SignInTaps + 5, 0), (hand.Taps, hand.Keys));
        IReadOnlyList<Jar> jars = await JarsAsync(kitchen);
        Assert.Equal(Facts(jars[0]), Facts(jars[1]));
        Assert.Equal("beet 1.3 kg, 2.7 %, 1.7 l, Beet for soup, ALittleSour", Facts(jars[1]));
        Assert.Equal(kitchen.Now, jars[1].PackedAt);

        static string Facts(Jar jar) => FormattableString.Invariant(
            $"{jar.Portions[0].Produce} {jar.Portions[0].MassKilograms} kg, {jar.Salting.Percent} %, {jar.VesselLitres} l, {jar.Name}, {jar.Target}");
    }

    private static async Task<IReadOnlyList<Jar>> JarsAsync(RunningKitchen kitchen) =>
        await kitchen.Services.GetRequiredService<IJarBook>().KeptAsync(CancellationToken.None);

    private static ILocator Bar(IPage page, string name) => Hand.Bar(page, name);

    private static Task ToJarAsync(Hand hand, int number) => hand.ToJarAsync(number);

    private Task<Hand> SignInAsync(RunningKitchen kitchen, bool script, Func<IPage, Task>? prepare = null) =>
        Hand.SignInAsync(chromium, kitchen, script, prepare);
}
