using System.Text.Json;
using YamlDotNet.Serialization;

namespace FermentWatch.Export.Tests.Dashboards;

/// <summary>The files that Grafana is given: they must load as they lie there, with nothing to be filled in by hand.</summary>
public class BoardFileTests
{
    public static TheoryData<string> Names => [.. Board.All.Select(board => board.Name)];

    [Fact]
    public void Boards_AreTheFour_EachWithAUidOfItsOwn()
    {
        Assert.Equal(["jar", "kitchen", "sensors", "service"], Board.All.Select(board => board.Name));
        Assert.All(Board.All, board => Assert.Equal($"fermentwatch-{board.Name}", board.Json.GetProperty("uid").GetString()));
        Assert.Equal(Board.All.Count, Board.All.Select(board => board.Json.GetProperty("title").GetString()).Distinct().Count());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Board_HoldsNothingThatAnExportLeaves(string name)
    {
        Board board = Named(name);
        foreach (string left in (string[])["__inputs", "__requires", "${DS_", "\"iteration\"", "-- Grafana --"])
            Assert.DoesNotContain(left, board.Text, StringComparison.Ordinal);
        Assert.False(board.Json.TryGetProperty("id", out _));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Panels_HaveATitleAUnitAQueryAndASourceThatIsProvisioned(string name)
    {
        Board board = Named(name);
        string[] sources = ProvisionedSources();
        Assert.NotEmpty(board.Panels);
        Assert.Equal(board.Panels.Count(), board.Panels.Select(panel => panel.GetProperty("id").GetInt32()).Distinct().Count());
        Assert.Equal(board.Panels.Count(), board.Panels.Select(panel => panel.GetProperty("title").GetString()).Distinct().Count());
        Assert.All(board.Panels, panel =>
        {
            Assert.False(string.IsNullOrWhiteSpace(panel.GetProperty("title").GetString()));
            Assert.False(string.IsNullOrWhiteSpace(panel.GetProperty("fieldConfig").GetProperty("defaults").GetProperty("unit").GetString()));
            Assert.NotEmpty(panel.GetProperty("targets").EnumerateArray());
        });
        foreach (JsonElement source in Sources(board.Json))
            Assert.Contains($"{source.GetProperty("type").GetString()} {source.GetProperty("uid").GetString()}", sources);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Panels_LieBesideEachOtherOnTheGrid(string name)
    {
        var taken = new HashSet<(int X, int Y)>();
        foreach (JsonElement place in Named(name).Panels.Select(panel => panel.GetProperty("gridPos")))
            for (int x = 0; x < place.GetProperty("w").GetInt32(); x++)
                for (int y = 0; y < place.GetProperty("h").GetInt32(); y++)
                    Assert.True(taken.Add((place.GetProperty("x").GetInt32() + x, place.GetProperty("y").GetInt32() + y)), $"{place}");
        Assert.InRange(taken.Max(cell => cell.X), 0, 23);
    }

    [Fact]
    public void Provisioning_OfBoards_NamesAFolderAndLeavesTheFilesTheirOwners()
    {
        Dictionary<object, object> provider = Assert.Single(Listed("dashboards", "providers"));
        Assert.Equal("file", provider["type"]);
        Assert.Equal("false", provider["allowUiUpdates"]);
        Assert.StartsWith("/", (string)((Dictionary<object, object>)provider["options"])["path"], StringComparison.Ordinal);
    }

    private static Board Named(string name) => Board.All.Single(board => board.Name == name);

    private static string[] ProvisionedSources()
    {
        string[] sources = [.. Listed("datasources", "datasources").Select(source => $"{source["type"]} {source["uid"]}")];
        Assert.Equal(["influxdb fermentwatch-series", "prometheus fermentwatch-service"], sources);
        return sources;
    }

    private static IEnumerable<Dictionary<object, object>> Listed(string folder, string key) =>
        Directory.GetFiles(Path.Combine(Board.Folder, "provisioning", folder), "*.yaml").SelectMany(file =>
        {
            var yaml = new DeserializerBuilder().Build().Deserialize<Dictionary<string, object>>(File.ReadAllText(file));
            Assert.Equal("1", yaml["apiVersion"]);
            return ((List<object>)yaml[key]).Cast<Dictionary<object, object>>();
        });

    /// <summary>Every data source that is named anywhere in a board.</summary>
    private static IEnumerable<JsonElement> Sources(JsonElement json) => json.ValueKind switch
    {
        JsonValueKind.Object => json.EnumerateObject().SelectMany(property =>
            property.Name == "datasource" ? [property.Value] : Sources(property.Value)),
        JsonValueKind.Array => json.EnumerateArray().SelectMany(Sources),
        _ => [],
    };
}
