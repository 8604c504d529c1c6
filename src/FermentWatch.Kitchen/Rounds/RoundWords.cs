using System.Globalization;
using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>The round as a message that is complete without opening anything and is read aloud in under 15 seconds.</summary>
public static class RoundWords
{
    /// <summary>The heading of a round's message.</summary>
    public static string Title(RoundSheet sheet)
    {
        int jars = sheet.Jars.Count();
        return string.Create(CultureInfo.InvariantCulture,
            $"{sheet.Date:ddd d MMM}: {jars} {(jars == 1 ? "jar" : "jars")}, {Minutes(sheet)}");
    }

    /// <summary>The message: the look through the glass by shelf, then what differs from it.</summary>
    public static string Body(RoundSheet sheet)
    {
        string shelves = string.Join("; ", sheet.Shelves.Select(shelf => $"{shelf.Place.Name} {NumberList.Say(Numbers(shelf.Jars))}"));
        var lines = new List<string> { $"Under brine? {shelves}" };
        AddLine(lines, sheet, "Let gas out", each => each.LookFors.Contains(LookFor.LetGasOut));
        AddLine(lines, sheet, "Open", each => each.Trouble is null && each.LookFors.Contains(LookFor.OpenForSurface));
        foreach (var trouble in sheet.Jars.Where(each => each.Trouble is not null).GroupBy(each => each.Trouble!.Kind).OrderBy(group => group.Key))
            lines.Add($"Watch for {Short(trouble.Key)}: {NumberList.Say(Numbers(trouble))}");
        AddLine(lines, sheet, "Measure pH", each => each.LookFors.Contains(LookFor.MeasurePh));
        AddLine(lines, sheet, "Taste", each => each.LookFors.Contains(LookFor.Taste));
        AddLine(lines, sheet, "Missed yesterday", each => each.DaysNotLookedAt == 1);
        AddLine(lines, sheet, "Missed for days", each => each.DaysNotLookedAt > 1);
        return string.Join("\n", lines);
    }

    /// <summary>The evening's message for jars nobody has answered for.</summary>
    public static string EveningBody(RoundSheet sheet) =>
        string.Join("\n", sheet.Shelves.Select(shelf => (shelf.Place.Name, Jars: shelf.Jars.Where(each => !each.LookedAtToday).ToList()))
            .Where(shelf => shelf.Jars.Count > 0)
            .Select(shelf => $"{shelf.Name} {NumberList.Say(Numbers(shelf.Jars))}: a look through the glass will do."));

    private static void AddLine(List<string> lines, RoundSheet sheet, string what, Func<RoundJar, bool> which)
    {
        var numbers = Numbers(sheet.Jars.Where(which)).ToList();
        bool all = numbers.Count > 1 && numbers.Count == sheet.Jars.Count();
        if (numbers.Count > 0)
            lines.Add($"{what}: {(all ? "all" : NumberList.Say(numbers))}");
    }

    private static IEnumerable<int> Numbers(IEnumerable<RoundJar> jars) => jars.Select(each => each.Jar.Number);

    private static string Short(SightingKind kind) => kind switch
    {
        SightingKind.PiecesUp => "pieces up",
        SightingKind.Film => "film",
        SightingKind.FuzzOrUnsure => "fuzz",
        SightingKind.BrineLow => "low brine",
        SightingKind.OffSmell => "smell",
        SightingKind.Slime => "slime",
        _ => "what was seen",
    };

    private static string Minutes(RoundSheet sheet)
    {
        int opened = sheet.Jars.Count(each => each.Opening);
        int minutes = Math.Max(1, (int)Math.Round((sheet.Jars.Count() * 0.2) + opened, MidpointRounding.AwayFromZero));
        string time = minutes == 1 ? "one minute" : string.Create(CultureInfo.InvariantCulture, $"{minutes} minutes");
        return opened == 0 ? $"{time}, no opening" : time;
    }
}
