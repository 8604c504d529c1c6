using System.Text.Json;
using Spectre.Console;

namespace FermentWatch.Service.CommandLine;

/// <summary>Rows of text for people or machines.</summary>
internal static class Rows
{
    /// <summary>Writes rows under their columns.</summary>
    public static void Write(IReadOnlyList<string> columns, IReadOnlyList<string[]> rows, OutputKind kind, CommandContext context)
    {
        if (kind == OutputKind.Json)
            context.Output.WriteLine(JsonSerializer.Serialize(rows.Select(row =>
                columns.Zip(row).ToDictionary(pair => pair.First, pair => pair.Second))));
        else if (kind == OutputKind.Csv)
            foreach (IEnumerable<string> row in rows.Prepend([.. columns]))
                context.Output.WriteLine(string.Join(',', row.Select(Quoted)));
        else if (rows.Count == 0)
            context.Output.WriteLine("none yet");
        else
            Consoles.Write(Table(columns, rows), context);
    }

    private static Table Table(IReadOnlyList<string> columns, IReadOnlyList<string[]> rows)
    {
        var table = new Table().Border(TableBorder.Simple);
        foreach (string column in columns)
            table.AddColumn(column.Replace('_', ' '));
        foreach (string[] row in rows)
            table.AddRow([.. row.Select(Markup.Escape)]);
        return table;
    }

    private static string Quoted(string cell) =>
        cell.IndexOfAny([',', '"', '\n', '\r']) < 0 ? cell : $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
}
