using System.Globalization;
using System.Text;
using FermentWatch.Storage.Records;

namespace FermentWatch.Storage.Archives;

/// <summary>README.txt of an archive: every file and column with its unit, and what is left out.</summary>
internal static class ArchiveReadme
{
    internal const string FileName = "README.txt";

    private const string Beginning =
        """
        A HOUSEHOLD'S RECORDS

        'fermentwatch import FILE.zip' makes the same household of this file elsewhere. Nothing here shows that food may be eaten.

        FILES
          README.txt             this
          manifest.json          whose it is, and of each file its rows, bytes and SHA-256
          records/NAME.json      a table, a row a line, each value as it is stored; this is what import reads
          records/NAME.csv       the same for spreadsheets, UTF-8; text that a spreadsheet would take for a formula begins with '
          photos/ID.jpg          photos, named by the observation they belong to
          readings/sensor-KEY-QUANTITY.csv
                                 readings of one sensor (its key stands in records/sensor.json), where they were asked for:
            measured_at          time, ISO 8601 in UTC
            temperature_celsius  degrees Celsius; ph: no unit; millivolts: mV; humidity_percent: per cent
            received_at          time at which it came in, ISO 8601 in UTC
            time_source          Arrival (it came without a time), Payload, PayloadRelative
            verdict              Counts, Pending (not judged yet), or why it is left out

        LEFT OUT
        """;

    internal static string Of(IReadOnlyList<TableShape> shapes, RecordsContext model)
    {
        var text = new StringBuilder(Beginning).Append('\n');
        foreach (string words in HouseholdTables.LeftOutOfTaken)
            text.Append("  ").Append(words).Append('\n');
        foreach (string reason in HouseholdTables.LeftOut.Where(each => each.Value != HouseholdTables.NotUsed)
            .Select(each => $"{each.Key.ToLowerInvariant()}: {each.Value}"))
            text.Append("  ").Append(reason).Append('\n');
        text.Append("\nTABLES\nEmpty in CSV, and null in JSON: it was not said.\n");
        foreach (TableShape shape in shapes)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n{shape.Table.File}: {shape.Table.Words}\n");
            int width = shape.Taken.Max(column => column.Title.Length);
            foreach (ColumnMeaning column in ColumnMeaning.Of(shape, model))
                text.Append("  ").Append(column.Column.Title.PadRight(width)).Append("  ").Append(column.Words).Append('\n');
        }
        return text.ToString().ReplaceLineEndings("\r\n");
    }
}
