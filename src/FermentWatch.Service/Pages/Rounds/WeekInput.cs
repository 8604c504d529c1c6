using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Service.Pages.Rounds;

/// <summary>The ticks of a week sheet as the browser sends them.</summary>
public sealed class WeekInput
{
    /// <summary>Each <c>NUMBER/DATE</c>.</summary>
    public List<string>? Ticks { get; set; }

    /// <summary>A tick as jar number and date; null if it is none.</summary>
    public static (int Number, LocalDate Date)? Read(string tick)
    {
        string[] parts = tick.Split('/');
        return parts.Length == 2 && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            && LocalDatePattern.Iso.Parse(parts[1]) is { Success: true, Value: var date } ? (number, date) : null;
    }
}
