using System.Text.Json;

namespace FermentWatch.Service.Tests.CommandLine;

/// <summary>Recipes on the command line, in a household of its own.</summary>
public sealed class RecipeTests : IAsyncLifetime
{
    private const string Kraut = """
        {"format": "fermentwatch-recipe/1", "name": "garden kraut",
         "vegetables": [{"name": "cabbage", "grams": 900}, {"name": "carrot", "grams": 100, "note": "grated"}],
         "seasonings": [{"name": "mustard seed", "grams": 5}], "vinegar_grams": 95, "salt_percent": 2.5, "note": "Second row of the shelf."}
        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("fermentwatch-recipes").FullName;

    public async Task InitializeAsync() => Assert.Equal(0, (await In("member", "add", "Rowan")).ExitCode);

    public Task DisposeAsync()
    {
        Directory.Delete(_folder, recursive: true);
        return Task.CompletedTask;
    }

    [Fact]
    public async Task Import_AFile_IsListedShownForAsMuchAsIsAskedAndWrittenAsTheSameFile()
    {
        Assert.Equal((0, "Kept as garden kraut.\n"), Both(await Run("import", FileOf(Kraut))));
        Assert.Equal(["name,vegetables,salt_percent,allergens,changed_at,by",
            "garden kraut,\"cabbage, carrot\",2.5,mustard,2026-10-04T12:00:00Z,command line"], (await Run("list", "--csv")).Lines);

        Call shown = await Run("show", "Garden Kraut", "--mass", "4.4kg", "--jars", "4", "--csv");
        Assert.Equal(["what,each_grams,all_grams", "cabbage,900,3600", "\"carrot, grated\",100,400", "mustard seed,5,20",
            "\"vinegar, 5 % acid\",95,380", "salt,25.13,100.5"], shown.Lines);
        Assert.Contains("For 4 jars", (await Run("show", "garden kraut", "--jars", "4")).Output, StringComparison.Ordinal);

        string path = Path.Combine(_folder, "out.json");
        Assert.Equal((0, path + "\n"), Both(await Run("export", "garden kraut", "--to", path)));
        string written = await File.ReadAllTextAsync(path);
        Assert.Equal(written + "\n", (await Run("export", "garden kraut")).Output);
        using JsonDocument file = JsonDocument.Parse(written);
        Assert.Equal(95, file.RootElement.GetProperty("vinegar_grams").GetDouble());
        Assert.Equal(2, (await Run("export", "garden kraut", "--to", path)).ExitCode);
    }

    [Fact]
    public async Task Import_NameThatIsThere_IsRefusedAndTakesItsPlaceWhenAsked()
    {
        await Run("import", FileOf(Kraut));
        string saltier = FileOf(Kraut.Replace("2.5", "2.75", StringComparison.Ordinal));
        Call again = await Run("import", saltier);
        Assert.Equal((2, "name: garden kraut cannot be used. Enter a name that no other recipe has."), (again.ExitCode,
            Assert.Single(again.ErrorLines)));
        Assert.Equal(0, (await Run("import", saltier, "--replace")).ExitCode);
        Assert.Contains(",2.75,", Assert.Single((await Run("list", "--csv")).Lines.Skip(1)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Import_OddSalt_IsAskedAboutAndTakenWhenItIsRight()
    {
        string soft = FileOf(Kraut.Replace("2.5", "1.6", StringComparison.Ordinal));
        Call asked = await Run("import", soft);
        Assert.Equal(2, asked.ExitCode);
        Assert.Contains("--it-is-right", Assert.Single(asked.ErrorLines), StringComparison.Ordinal);
        Assert.Equal(0, (await Run("import", soft, "--it-is-right")).ExitCode);
        Assert.Contains("Caution: Only 1.6 % of salt?", (await Run("show", "garden kraut")).Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("show gardenkraut", 2, "Did you mean garden kraut?")]
    [InlineData("export nettles", 2, "recipe list")]
    [InlineData("import nowhere.json", 1, "nowhere.json")]
    [InlineData("show nettles --jars 4", 2, "recipe list")]
    public async Task Call_ForWhatIsNotThere_SaysSoInOneLine(string args, int exitCode, string says)
    {
        await Run("import", FileOf(Kraut));
        Call call = await Run(args.Split(' '));
        Assert.Equal(exitCode, call.ExitCode);
        Assert.Contains(says, Assert.Single(call.ErrorLines), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Import_WhatCannotBe_IsRefusedByItsFieldsAndNothingIsKept()
    {
        Call call = await Run("import", FileOf(Kraut.Replace("2.5", "9", StringComparison.Ordinal).Replace("900", "-1", StringComparison.Ordinal)));
        Assert.Equal(["salt_percent", "vegetables[0].grams"], call.ErrorLines.Select(line => line.Split(':')[0]).Order());
        Assert.Equal("none yet\n", (await Run("list")).Output);
    }

    private static (int, string) Both(Call call) => (call.ExitCode, call.Output);

    private string FileOf(string text)
    {
        string path = Path.Combine(_folder, $"{Guid.NewGuid()}.json");
        File.WriteAllText(path, text);
        return path;
    }

    private Task<Call> Run(params string[] args) => In(["recipe", .. args]);

    private Task<Call> In(params string[] args) =>
        Call.WithEnvironment(new Dictionary<string, string> { ["FERMENTWATCH__STORAGE__FOLDER"] = _folder }, args);
}
