using System.Text.Json;

namespace FermentWatch.Export.Tests.Dashboards;

/// <summary>One query of a panel.</summary>
/// <param name="Board">The board's file.</param>
/// <param name="Panel">The panel's title.</param>
/// <param name="RefId">The query's letter.</param>
/// <param name="Source">The uid of its data source.</param>
/// <param name="Text">What it asks, with macros.</param>
/// <param name="Span">How far back the panel looks, such as <c>28d</c>.</param>
internal sealed record BoardQuery(string Board, string Panel, string RefId, string Source, string Text, string Span);

/// <summary>A variable that people choose, filled by a query.</summary>
internal sealed record BoardVariable(string Name, string Text);

/// <summary>A board as it lies in <c>dashboards/boards</c>.</summary>
internal sealed class Board
{
    private Board(string file)
    {
        Name = Path.GetFileNameWithoutExtension(file);
        Text = File.ReadAllText(file);
        Json = JsonDocument.Parse(Text).RootElement;
    }

    public static string Folder { get; } = Path.Combine(Root(), "dashboards");

    public static IReadOnlyList<Board> All { get; } =
        [.. Directory.GetFiles(Path.Combine(Folder, "boards")).Order(StringComparer.Ordinal).Select(file => new Board(file))];

    public string Name { get; }

    public string Text { get; }

    public JsonElement Json { get; }

    public IEnumerable<JsonElement> Panels => Json.GetProperty("panels").EnumerateArray();

    public IEnumerable<BoardVariable> Variables => Json.GetProperty("templating").GetProperty("list").EnumerateArray()
        .Select(variable => new BoardVariable(variable.GetProperty("name").GetString()!, variable.GetProperty("query").GetString()!));

    public IEnumerable<BoardQuery> Queries => from panel in Panels
                                              from target in panel.GetProperty("targets").EnumerateArray()
                                              select new BoardQuery(Name, panel.GetProperty("title").GetString()!,
                                                  target.GetProperty("refId").GetString()!,
                                                  panel.GetProperty("datasource").GetProperty("uid").GetString()!,
                                                  target.GetProperty(target.TryGetProperty("expr", out _) ? "expr" : "query").GetString()!,
                                                  SpanOf(panel));

    private string SpanOf(JsonElement panel) => panel.TryGetProperty("timeFrom", out JsonElement own) ? own.GetString()!
        : Json.GetProperty("time").GetProperty("from").GetString()!["now-".Length..];

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "FermentWatch.sln")))
            folder = folder.Parent ?? throw new InvalidOperationException("FermentWatch.sln was not found above the tests.");
        return folder.FullName;
    }
}
