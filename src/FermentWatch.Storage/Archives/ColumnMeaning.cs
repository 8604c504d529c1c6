using System.Globalization;
using FermentWatch.Storage.Records;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using NodaTime;

namespace FermentWatch.Storage.Archives;

/// <summary>What the values of a column mean: how a spreadsheet shows them, and what README.txt says of them.</summary>
internal sealed class ColumnMeaning
{
    private readonly Type _type;

    private ColumnMeaning(ShapeColumn column, Type type, bool isStructured)
    {
        Column = column;
        _type = Nullable.GetUnderlyingType(type) ?? type;
        Words = isStructured ? "JSON" : WordsOf();
    }

    internal ShapeColumn Column { get; }

    /// <summary>What it holds and in which unit.</summary>
    internal string Words { get; }

    /// <summary>Whether the value is text that a person may have typed, and not a number or a time.</summary>
    internal bool IsText => Column.Type == "TEXT";

    /// <summary>The meanings of the columns of a table that are taken along.</summary>
    internal static IReadOnlyList<ColumnMeaning> Of(TableShape shape, RecordsContext context)
    {
        ITable table = context.Model.GetRelationalModel().FindTable(shape.Table.Name, null)!;
        return [.. shape.Taken.Select(column =>
        {
            IProperty property = table.FindColumn(column.Name)!.PropertyMappings[0].Property;
            Type type = property.ClrType;
            bool isStructured = column.Type == "TEXT" && type != typeof(string) && type.Namespace != nameof(NodaTime) && !type.IsValueType;
            return new ColumnMeaning(column, type, isStructured);
        })];
    }

    /// <summary>The value on a row as a spreadsheet shows it; empty where there is none.</summary>
    internal string Show(SqliteDataReader row, int place, TableShape shape) => row.GetValue(place) switch
    {
        DBNull => "",
        byte[] => PhotoFile.NameOf(row.GetString(shape.KeyPlace)),
        long whole => Show(whole),
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        var text => (string)text,
    };

    private string Show(long whole)
    {
        if (_type == typeof(Instant))
            return StoredTime.Text(whole);
        if (_type == typeof(bool))
            return whole == 0 ? "no" : "yes";
        return _type.IsEnum ? Enum.ToObject(_type, whole).ToString()! : whole.ToString(CultureInfo.InvariantCulture);
    }

    private string WordsOf()
    {
        if (_type == typeof(Instant))
            return "time; JSON: milliseconds since 1970 in UTC, CSV: ISO 8601 in UTC";
        if (_type == typeof(Duration))
            return "span of time, milliseconds";
        if (_type == typeof(LocalDate))
            return "date";
        if (_type == typeof(LocalTime))
            return "time of day on the household's clock";
        if (_type == typeof(Guid))
            return "id";
        if (_type == typeof(bool))
            return "JSON: 0 or 1, CSV: no or yes";
        if (_type == typeof(byte[]))
            return "file of the photo, JPEG";
        if (_type.IsEnum)
            return ChoicesOf();
        return _type == typeof(string) ? "text" : ColumnUnit.Of(Column.Title) ?? "number";
    }

    private string ChoicesOf()
    {
        var choices = Enum.GetValuesAsUnderlyingType(_type).Cast<object>()
            .Select(value => Column.Type == "TEXT" ? Enum.GetName(_type, value) : string.Create(CultureInfo.InvariantCulture,
                $"{value} {Enum.GetName(_type, value)}"));
        string words = string.Join(", ", choices.Distinct());
        return Column.Type == "TEXT" ? $"one of {words}" : $"JSON: the number, CSV: the word of {words}";
    }
}

/// <summary>The unit of a number, as the name of its column says it.</summary>
internal static class ColumnUnit
{
    private const string Whole = "whole number", OfQuantity = "unit the quantity is stored in";

    private static readonly (string Ending, string Unit)[] Known =
    [
        ("kilograms", "kg"), ("litres", "L"), ("millilitres", "mL"), ("celsius", "degrees Celsius"), ("normality", "mol/L of base"),
        ("percent_lactic", "per cent, as lactic acid"), ("percent", "per cent"), ("fraction", "share, 0 to 1"), ("ph", "pH, no unit"),
        ("p10", "days since packing"), ("p50", "days since packing"), ("p90", "days since packing"),
        ("offset", OfQuantity), ("plausible_low", OfQuantity), ("plausible_high", OfQuantity),
        ("number", Whole), ("shelf_order", Whole), ("position", Whole), ("seq", Whole), ("key", Whole), ("attempts", Whole),
        ("failed_count", Whole), ("revision", Whole), ("facts", Whole), ("id", Whole),
    ];

    /// <summary>The unit; null where the name does not say one.</summary>
    internal static string? Of(string title)
    {
        foreach ((string ending, string unit) in Known.OrderByDescending(each => each.Ending.Length))
            if (title == ending || title.EndsWith("_" + ending, StringComparison.Ordinal))
                return unit;
        return null;
    }
}
