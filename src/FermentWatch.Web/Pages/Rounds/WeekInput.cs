using System.Globalization;
using FermentWatch.Acts.Rounds;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Web.Pages.Shared;
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

/// <summary>The answer for a shelf as the browser sends it.</summary>
public sealed class ShelfInput
{
    /// <summary>Made when the page was shown.</summary>
    public Guid Id { get; set; }

    /// <summary>Numbers of the jars that stood on the page's shelf, by comma.</summary>
    public string? Jars { get; set; }

    /// <summary>Numbers of the jars where something is wrong.</summary>
    public List<int>? Except { get; set; }

    /// <summary>What was seen at a ticked jar, by its number; empty where it is said on a page of its own.</summary>
    public Dictionary<int, string?>? Seen { get; set; }

    /// <summary>Whether those that were to be opened were opened.</summary>
    public bool Opened { get; set; }

    /// <summary>Numbers of the jars that the page said were to be opened, by comma.</summary>
    public string? Opening { get; set; }
}

/// <summary>An answer about one jar as the browser sends it: which button, and a note.</summary>
public sealed class SeenInput
{
    /// <summary>Made when the page was shown.</summary>
    public Guid Id { get; set; }

    /// <summary>The name of what was chosen.</summary>
    public string? Choice { get; set; }

    /// <summary>What was chosen; null where it is none of them.</summary>
    public T? Chosen<T>() where T : struct, Enum => Enum.TryParse(Choice, out T chosen) && Enum.IsDefined(chosen) ? chosen : null;

    /// <summary>What is said where it is none of them.</summary>
    public FormErrors NotChosen() =>
        new([new Refusal("answer", string.IsNullOrWhiteSpace(Choice) ? "nothing" : Choice, "one of the buttons would be right")]);

    public string? Note { get; set; }

    /// <summary>What is said of a form that was sent before with another answer.</summary>
    public Again Again { get; set; }

    /// <summary>Where a finished jar went.</summary>
    public Destination? Went { get; set; }

    /// <summary>To whom it was given.</summary>
    public string? GivenTo { get; set; }

    /// <summary>Where it goes, for a jar that goes into the cold.</summary>
    public string? Place { get; set; }
}
