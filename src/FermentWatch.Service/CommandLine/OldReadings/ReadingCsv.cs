using System.Globalization;
using CsvHelper;
using FermentWatch.Kitchen.Readings;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Service.CommandLine.OldReadings;

/// <summary>A CSV file of earlier readings, read line by line as often as one likes.</summary>
internal sealed class ReadingCsv(FileStream file, ReadingMap map)
{
    private const int LinesBetweenLooks = 20_000;
    private const int LongestLine = 1 << 20;

    /// <summary>Whether the two columns are there; else what is wrong.</summary>
    public string? WrongHeader()
    {
        using CsvReader csv = Open();
        csv.ReadHeader();
        foreach (string column in new[] { map.TimeColumn, map.ValueColumn })
            if (!csv.TryGetFieldIndex(column, out _))
                return $"line 1: there is no column '{column}'; there are {string.Join(", ", csv.Headers)}";
        return null;
    }

    /// <summary>Reads the file from its beginning.</summary>
    /// <param name="bad">Told of each line that is no reading, with what is wrong.</param>
    /// <param name="progress">Told the share that is read, 0 to 1.</param>
    public IEnumerable<(Instant At, double Value)> Read(Action<long, string> bad, Action<double> progress)
    {
        using CsvReader csv = Open();
        csv.ReadHeader();
        int time = csv.GetFieldIndex(map.TimeColumn), value = csv.GetFieldIndex(map.ValueColumn);
        for (long lines = 0; Next(csv, bad); lines++)
        {
            if (lines % LinesBetweenLooks == 0)
                progress(file.Position / (double)Math.Max(1, file.Length));
            if (ReadLine(csv, time, value, out string wrong) is { } reading)
                yield return reading;
            else
                bad(csv.LineNumber, wrong);
        }
    }

    private CsvReader Open()
    {
        file.Position = 0;
        return CsvReader.Create(file, new CsvReaderOptions
        {
            Separator = map.Delimiter, TrimWhitespace = true, TrackLineNumbers = true, MaxRecordSize = LongestLine,
        }, leaveOpen: true);
    }

    /// <summary>Moves on; a line that is no CSV ends the file, since what follows cannot be told apart.</summary>
    private static bool Next(CsvReader csv, Action<long, string> bad)
    {
        try
        {
            return csv.Read();
        }
        catch (CsvFormatException trouble)
        {
            bad(trouble.LineNumber, trouble.Message);
            return false;
        }
    }

    private (Instant At, double Value)? ReadLine(CsvReader csv, int time, int value, out string wrong)
    {
        wrong = $"there are {csv.FieldCount} fields where the header has {csv.Headers.Count}";
        if (csv.FieldCount <= Math.Max(time, value))
            return null;
        if (map.Time.Read(csv.GetString(time), out wrong) is not { } at)
            return null;
        if (at < map.Earliest || at > map.Latest)
        {
            wrong = $"{InstantPattern.General.Format(at)} "
                + (at > map.Latest ? "is in the future" : "is before there were such sensors: a clock that was never set");
            return null;
        }
        if (Number(csv, value) is { } number)
            return (at, map.Stored(number));
        wrong = $"'{csv.GetString(value)}' is no {MeasuredQuantity.Of(map.Unit.Quantity).Name}; a number such as 18.5 or 18,5 would be right";
        return null;
    }

    private static double? Number(CsvReader csv, int field)
    {
        // Without thousands: 10,5 is ten and a half, and not a hundred and five.
        if (double.TryParse(csv.GetSpan(field), NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number))
            return number;
        string text = csv.GetString(field);
        return text.Count(letter => letter == ',') == 1
            && double.TryParse(text.Replace(',', '.'), NumberStyles.Float, CultureInfo.InvariantCulture, out number) && double.IsFinite(number)
                ? number : null;
    }
}

/// <summary>What of a file means what.</summary>
internal sealed record ReadingMap
{
    public required string TimeColumn { get; init; }

    public required string ValueColumn { get; init; }

    public required TimeColumn Time { get; init; }

    /// <summary>The unit of the values; with it the quantity.</summary>
    public required MeasureUnit Unit { get; init; }

    /// <summary>Added to each value, in the unit in which the quantity is stored.</summary>
    public double Offset { get; init; }

    /// <summary>What stands between fields; null where it is found out.</summary>
    public char? Delimiter { get; init; }

    /// <summary>Times before it, and beyond the other, are refused.</summary>
    public required Instant Earliest { get; init; }

    public required Instant Latest { get; init; }

    /// <summary>The value as it is stored. One by which a part says that it has none keeps saying so.</summary>
    public double Stored(double value)
    {
        double stored = Unit.ToStored(value);
        return MeasuredQuantity.Of(Unit.Quantity).IsSentinel(stored) ? stored : stored + Offset;
    }
}
