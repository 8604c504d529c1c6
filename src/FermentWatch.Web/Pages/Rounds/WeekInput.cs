using System.Globalization;
using FermentWatch.Acts.Rounds;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Web.Pages.Rounds;

/// <summary>The boxes of a week sheet as the browser sends them.</summary>
public sealed class WeekInput
{
    /// <summary>Each <c>NUMBER/DATE/MARK</c>, or empty.</summary>
    public List<string>? Ticks { get; set; }

    /// <summary>A box as it is sent.</summary>
    public static string Write(int number, LocalDate date, WeekMark mark) =>
        string.Create(CultureInfo.InvariantCulture, $"{number}/{date:uuuu-MM-dd}/{mark.Word}");

    /// <summary>A box that was filled in; null if it is none.</summary>
    public static WeekTick? Read(string? sent)
    {
        string[] parts = (sent ?? "").Split('/');
        return parts.Length == 3 && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            && LocalDatePattern.Iso.Parse(parts[1]) is { Success: true, Value: var date }
            && WeekMark.All.FirstOrDefault(mark => mark.Word == parts[2]) is { } mark
            ? new WeekTick(number, date, mark) : null;
    }
}
