using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Typed;
using NodaTime;

namespace FermentWatch.Service.CommandLine.Outlook;

/// <summary>Reads the temperatures of the room: one for all days, or a file, and planned moves.</summary>
internal static class TemperatureReader
{
    private const double LongestDays = 366;
    private const string Range = "-5 to 45 C";

    /// <summary>The temperatures from packing on.</summary>
    /// <param name="input">What was typed.</param>
    /// <param name="days">How far the forecast looks.</param>
    /// <param name="now">The present.</param>
    /// <param name="reader">Gathers refusals.</param>
    public static TemperatureCourse Read(OutlookInput input, double days, Instant now, FieldReader reader)
    {
        TemperatureCourse course = TemperatureCourse.Typical(TypicalRoom.Usual);
        if (input.Temperature is null == input.Temperatures is null)
            reader.Refuse("temperature", input.Temperature, "either --temperature 18C or --temperatures FILE.csv would be right");
        else if (input.Temperature is not null)
            course = TemperatureCourse.Constant(Celsius("temperature", input.Temperature, reader));
        else if (TemperatureFile.Read(input.Temperatures!, input.Packed, now, reader) is { Count: > 0 } readings)
            course = TemperatureCourse.FromReadings(readings, TypicalRoom.Usual);
        if (input.Packed is not null && input.Temperatures is null)
            reader.Refuse("packed", input.Packed, "it says on which day a file's times begin: give --temperatures FILE.csv too, or leave it out");
        foreach ((double day, double celsius) in ReadMoves(input.Moves, reader))
            course = course.ThenIn(day, new TypicalRoom(celsius, TemperatureStep.RoomSensorSpreadCelsius), days);
        return course;
    }

    private static double Celsius(string field, string? typed, FieldReader reader) => reader.Read(
        field, typed, Amount.Celsius, "C", TemperatureStep.LowestCelsius, TemperatureStep.HighestCelsius, Range);

    private static IEnumerable<(double Day, double Celsius)> ReadMoves(IReadOnlyList<string> moves, FieldReader reader)
    {
        var read = new SortedDictionary<double, double>();
        foreach (string typed in moves)
        {
            string[] sides = typed.Split('=', 2, StringSplitOptions.TrimEntries);
            if (sides.Length == 2 && Amount.Number.TryRead(sides[0], null, out double day) && day is >= 0 and <= LongestDays
                && Amount.Celsius.TryRead(sides[1], "C", out double celsius) && TemperatureStep.IsInRange(celsius)
                && read.TryAdd(day, celsius))
                continue;
            reader.Refuse("move", typed, $"DAY=TEMPERATURE with a day from 0 to 366, each once, and {Range} would be right, such as 10=18C");
        }
        return read.Select(move => (move.Key, move.Value));
    }
}
