using System.Globalization;
using CsvHelper;

namespace FermentWatch.Reference.Tests.Published;

/// <summary>The tables of published figures that lie beside the tests, each row with its source.</summary>
public static class Figures
{
    /// <summary>Rows of a table as column name to text.</summary>
    public static IReadOnlyList<IReadOnlyDictionary<string, string>> Read(string table)
    {
        using Stream stream = typeof(Figures).Assembly.GetManifestResourceStream(table)
            ?? throw new InvalidOperationException($"{table} is not among the figures.");
        using CsvReader reader = CsvReader.Create(stream, new CsvReaderOptions { HasHeader = true }, leaveOpen: false);
        var rows = new List<IReadOnlyDictionary<string, string>>();
        while (reader.Read())
            rows.Add(reader.Headers.Select((name, index) => (name, Text: index < reader.FieldCount ? reader.GetString(index) : ""))
                .ToDictionary(pair => pair.name, pair => pair.Text));
        return rows;
    }

    /// <summary>A number of a row.</summary>
    public static double Number(IReadOnlyDictionary<string, string> row, string column) =>
        double.Parse(row[column], NumberStyles.Float, CultureInfo.InvariantCulture);
}
