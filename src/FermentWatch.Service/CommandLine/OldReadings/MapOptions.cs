using System.CommandLine;
using FermentWatch.Acts.Sensors;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Service.CommandLine.OldReadings;

/// <summary>The options that say what of a file means what.</summary>
internal sealed class MapOptions
{
    private const double LargestOffset = 1000;

    private readonly Option<string> _sensor, _quantity, _time, _value, _unit, _offset, _zone, _utcOffset, _delimiter, _format;

    public MapOptions(Command verb)
    {
        Option<string> Text(string name, string helpName, string description, bool required = false)
        {
            var option = new Option<string>(name) { HelpName = helpName, Description = description, Required = required };
            verb.Add(option);
            return option;
        }
        _sensor = Text("--sensor", "NAME", "The sensor that gets them, as 'fermentwatch sensor list' names it.", required: true);
        _time = Text("--time-column", "T", "The column of the times.", required: true);
        _value = Text("--value-column", "V", "The column of the values.", required: true);
        _quantity = Text("--quantity", "QUANTITY", $"{MeasuredQuantity.NamesInWords}; temperature without it.");
        _unit = Text("--unit", "UNIT", "Cel, degF or K for temperatures; the unit in which the quantity is stored without it.");
        _offset = Text("--offset", "N", "Added to each value, in degrees Celsius for temperatures.");
        _zone = Text("--zone", "ZONE", "The clock of times that bear no offset, such as Europe/Vienna.");
        _utcOffset = Text("--utc-offset", "OFFSET", "The same where the clock never changed, such as +01:00.");
        _delimiter = Text("--delimiter", "SIGN", "What stands between fields: ',' or ';', a bar or 'tab'; found out without it.");
        _format = Text("--time-format", "FORM", "unix, unix-ms or a pattern such as 'dd.MM.uuuu HH:mm'; ISO 8601 without it.");
    }

    public string? Sensor(ParseResult call) => call.GetValue(_sensor);

    /// <summary>The map, or everything that is wrong with it.</summary>
    public (ReadingMap? Map, List<Refusal> Refusals) Read(ParseResult call, TakeOldReadings act)
    {
        var reader = new FieldReader();
        MeasuredQuantity quantity = QuantityOf(call.GetValue(_quantity), reader);
        var map = new ReadingMap
        {
            TimeColumn = call.GetValue(_time)!,
            ValueColumn = call.GetValue(_value)!,
            Time = TimeColumn.Of(call.GetValue(_format), call.GetValue(_zone), call.GetValue(_utcOffset), reader),
            Unit = UnitOf(call.GetValue(_unit), quantity, reader),
            Offset = call.GetValue(_offset) is { } offset
                ? reader.Read("offset", offset, Amount.Number, null, -LargestOffset, LargestOffset, "a number from -1000 to 1000") : 0,
            Delimiter = DelimiterOf(call.GetValue(_delimiter), reader),
            Earliest = TakeOldReadings.Earliest,
            Latest = act.Latest,
        };
        return (reader.Refusals.Count == 0 ? map : null, reader.Refusals);
    }

    private static MeasuredQuantity QuantityOf(string? typed, FieldReader reader)
    {
        if (typed is null)
            return MeasuredQuantity.Ordinary;
        if (MeasuredQuantity.Find(typed) is { } quantity)
            return MeasuredQuantity.Of(quantity);
        reader.Refuse("quantity", typed, $"{MeasuredQuantity.NamesInWords} would be right");
        return MeasuredQuantity.Ordinary;
    }

    private static MeasureUnit UnitOf(string? typed, MeasuredQuantity quantity, FieldReader reader)
    {
        if (typed is null)
            return quantity.StoredUnit;
        if (MeasureUnit.Meant(typed) is { } unit && unit.Quantity == quantity.Key)
            return unit;
        string[] symbols = [.. quantity.Units.Select(each => each.Symbol)];
        reader.Refuse("unit", typed, $"{(symbols.Length > 1 ? MeasureUnit.OneOf(symbols) : symbols[0])} would be right");
        return quantity.StoredUnit;
    }

    private static char? DelimiterOf(string? typed, FieldReader reader)
    {
        switch (typed)
        {
            case null:
                return null;
            case "tab":
                return '\t';
            case "," or ";" or "|" or "\t":
                return typed[0];
            default:
                reader.Refuse("delimiter", typed, "',', ';', '|' or 'tab' would be right");
                return null;
        }
    }
}
