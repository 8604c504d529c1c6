using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Service.CommandLine.Outlook;

/// <summary>Reads what was measured: a pH, <c>DAY=PH:METHOD</c>, or a titration.</summary>
internal static class ReadingReader
{
    private const double LongestDays = 366;

    public static PhReading? Read(string typed, FieldReader reader)
    {
        string[] sides = typed.Split(['=', ':'], StringSplitOptions.TrimEntries);
        if (sides.Length == 3
            && Amount.Number.TryRead(sides[0], null, out double day) && day is >= 0 and <= LongestDays
            && Amount.Number.TryRead(sides[1], null, out double ph) && ph is >= 2 and <= 8
            && Enum.TryParse(sides[2], ignoreCase: true, out PhMethod method) && Enum.IsDefined(method) && !char.IsAsciiDigit(sides[2][0]))
            return new PhReading(day, ph, method);
        reader.Refuse("reading", typed,
            "DAY=PH:METHOD with a day from 0 to 366, a pH from 2 to 8 and meter, probe or strip would be right, such as 3=4.2:meter");
        return null;
    }

    /// <summary>Reads a titration: <c>DAY=PERCENT</c>.</summary>
    public static AcidityReading? ReadTitration(string typed, FieldReader reader)
    {
        string[] sides = typed.Split('=', 2, StringSplitOptions.TrimEntries);
        if (sides.Length == 2
            && Amount.Number.TryRead(sides[0], null, out double day) && day is >= 0 and <= LongestDays
            && Amount.Percent.TryRead(sides[1], "%", out double percent) && percent is >= 0 and <= 5)
            return new AcidityReading(day, percent);
        reader.Refuse("titration", typed, "DAY=PERCENT with a day from 0 to 366 and 0 to 5 % lactic would be right, such as 10=1.2%");
        return null;
    }
}
