namespace FermentWatch.Service.Tests.CommandLine;

public sealed class JarTests : IDisposable
{
    private static readonly string[] Cabbage =
        ["put-up", "--what", "cabbage", "--how-much", "800g", "--salt", "2.25%", "--vessel", "1l", "--place", "kitchen counter"];

    private readonly string _folder = Directory.CreateTempSubdirectory("fermentwatch-jars").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task PutUp_SomethingElseThenATitration_AreWrittenDownWithTheirWords()
    {
        await Household();
        Call okra = await Run("put-up", "--what", "something else", "--its-name", "okra", "--how-much", "700g", "--salt", "2.5%", "--vessel", "1l",
            "--place", "kitchen counter");
        Assert.Equal((0, "jar 1, okra. Nothing is forecast: nobody has figures for okra here. Rounds, pH and the acid line are as for any jar.\n",
            ""), (okra.ExitCode, okra.Output, okra.Error));
        Assert.Equal("jar 2, cabbage\n", (await Run(Cabbage)).Output);
        // acidity_method: 10 g and 0.1 N, 11.10 mL is 1.0 %.
        Assert.Equal("Written down for jar 2: titrated: 1.00 % acid (11.1 mL x 0.1 N x 0.0901 x 100 / 10 mL).\n",
            (await Run("titration", "2", "--base-ml", "11.1")).Output);
    }

    [Fact]
    public async Task PutUp_LittleSalt_IsAskedAboutAndTakenWhenItIsRight()
    {
        await Household();
        string[] little = [.. Cabbage.Select(word => word == "2.25%" ? "1.2%" : word)];
        Call asked = await Run(little);
        Assert.Equal(2, asked.ExitCode);
        Assert.Contains("--it-is-right", Assert.Single(asked.ErrorLines), StringComparison.Ordinal);
        Assert.StartsWith("jar 1, cabbage. Nothing is forecast: salted with 1.2 %", (await Run([.. little, "--it-is-right"])).Output,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("titration 9 --percent 1.2%", "jar: 9 cannot be used. Enter the number of a jar there is.")]
    [InlineData("titration 1 --percent 12%", "acid: 12% cannot be used. Enter 0 to 5 %, such as 2.25%.")]
    public async Task Titration_WrongCall_ExitsTwoWithOneLine(string args, string line)
    {
        await Household();
        await Run(Cabbage);
        Call call = await Run(args.Split(' '));
        Assert.Equal((2, line), (call.ExitCode, Assert.Single(call.ErrorLines)));
    }

    private Task<Call> Household() => In("member", "add", "Rowan");

    private Task<Call> Run(params string[] args) => In(["jar", .. args]);

    private Task<Call> In(params string[] args) =>
        Call.WithEnvironment(new Dictionary<string, string> { ["FERMENTWATCH__STORAGE__FOLDER"] = _folder }, args);
}
