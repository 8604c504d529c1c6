using System.Globalization;
using FermentWatch.Kitchen.Words;

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

    /// <summary>The message: trouble first, in words, then what is opened, then the look through the glass and the rest.</summary>
    public static string Body(RoundSheet sheet)
    {
        var lines = new List<string>(Troubles(sheet, TroubleOf));
        lines.AddRange(ForAdults(sheet).Take(2));
        lines.Add(ThroughTheGlass(sheet));
        lines.AddRange(ForAdults(sheet).Skip(2));
        AddMissed(lines, sheet);
        return string.Join("\n", lines.Where(line => line.Length > 0));
    }

    /// <summary>The message to a child on duty: looking and reporting; what is for an adult stands in one line.</summary>
    public static string ChildBody(RoundSheet sheet)
    {
        var lines = new List<string>(Troubles(sheet, jar => jar.TroubleForAChild ?? TroubleOf(jar))) { ThroughTheGlass(sheet) };
        AddMissed(lines, sheet);
        string adults = string.Join("; ",
            ForAdults(sheet).Where(line => line.Length > 0).Select(line => char.ToLowerInvariant(line[0]) + line[1..]));
        lines.Add(adults.Length == 0 ? "Anything odd: tell an adult"
            : $"Ask an adult: {adults.Replace(": ", " ", StringComparison.Ordinal).Replace("pH ", "the pH of ", StringComparison.Ordinal)}");
        return string.Join("\n", lines);
    }

    /// <summary>The message to the adults on a day on which a child looks; empty where nothing is for them.</summary>
    /// <param name="sheet">The round.</param>
    /// <param name="who">Who looks.</param>
    public static (string Title, string Body)? BesideAChild(RoundSheet sheet, string who)
    {
        string[] lines = [.. ForAdults(sheet).Where(line => line.Length > 0)];
        return lines.Length == 0 ? null
            : (string.Create(CultureInfo.InvariantCulture, $"{sheet.Date:ddd d MMM}: {who} looks, this is for you"), string.Join("\n", lines));
    }

    /// <summary>The evening's message for jars nobody has answered for; plainer on the second day.</summary>
    public static (string Title, string Body) Evening(RoundSheet sheet)
    {
        var waiting = sheet.Jars.Where(each => !each.LookedAtToday).ToList();
        int days = waiting.Select(each => each.DaysNotLookedAt).DefaultIfEmpty().Max() + 1;
        string jars = waiting.Count == 1 ? "one jar was" : $"{waiting.Count} jars were";
        string shelves = string.Join("\n",
            sheet.Shelves.Select(shelf => (shelf.Place.Name, Jars: shelf.Jars.Where(each => !each.LookedAtToday).ToList()))
            .Where(shelf => shelf.Jars.Count > 0).Select(shelf =>
                $"{shelf.Name} {NumberList.Say(Numbers(shelf.Jars))}: a look through the glass will do."));
        if (days == 1)
            return ($"{char.ToUpperInvariant(jars[0])}{jars[1..]} not looked at today", shelves);
        string since = days == 2 ? "looked at neither today nor yesterday" : $"not looked at for {days} days";
        return ($"Please look: {jars} {since}", shelves + "\n" + Neglect.Words(days));
    }

    private static string ThroughTheGlass(RoundSheet sheet) =>
        $"Under brine? {string.Join("; ", sheet.Shelves.Select(shelf => $"{shelf.Place.Name} {NumberList.Say(Numbers(shelf.Jars))}"))}";

    /// <summary>What only an adult does, in the order of the message; empty where no jar needs it.</summary>
    private static IReadOnlyList<string> ForAdults(RoundSheet sheet) =>
    [
        Line(sheet, "Let gas out", each => each.LookFors.Contains(LookFor.LetGasOut)),
        Line(sheet, "Open", each => each.LookFors.Contains(LookFor.OpenForSurface)),
        Line(sheet, "Measure pH", each => each.LookFors.Contains(LookFor.MeasurePh)),
        Tasting(sheet),
        Deciding(sheet),
    ];

    private static string Tasting(RoundSheet sheet) => StandingFor(sheet, LookFor.Taste) is { Length: > 0 } jars ? $"Taste: {jars}" : "";

    private static string Deciding(RoundSheet sheet) =>
        StandingFor(sheet, LookFor.Decide) is { Length: > 0 } jars ? $"Cold, eat, leave? {jars}" : "";

    /// <summary>Jars of which something is asked, each with those it stands for; empty where there are none.</summary>
    private static string StandingFor(RoundSheet sheet, LookFor asked) =>
        string.Join(", ", sheet.Jars.Where(each => each.LookFors.Contains(asked)).Select(each =>
        string.Create(CultureInfo.InvariantCulture,
            $"{each.Jar.Number}{(each.Taste is { Others.Count: > 0 } taste ? $" (for {NumberList.Say(taste.Others)})" : "")}")));

    /// <summary>What is wrong, the worst first, like jars in one line: in words, then which.</summary>
    private static IEnumerable<string> Troubles(RoundSheet sheet, Func<RoundJar, string> words) => sheet.Jars
        .Where(each => each.Step.Kind <= StepKind.SeeTo || each.Trouble is not null).GroupBy(words).OrderBy(like =>
            like.Min(each => each.Step.Kind)).ThenBy(like => like.Min(each => each.Jar.Number))
        .Select(like => $"{(like.Count() == 1 ? "Jar" : "Jars")} {NumberList.Say(Numbers(like))}: {like.Key}");

    private static string TroubleOf(RoundJar jar) =>
        jar.Step.Kind <= StepKind.SeeTo ? jar.Step.InBrief : $"watch for {ObservationWords.InBrief(jar.Trouble!.Kind)}";

    private static void AddMissed(List<string> lines, RoundSheet sheet)
    {
        lines.Add(Line(sheet, "Missed yesterday", each => each.DaysNotLookedAt == 1));
        lines.Add(Line(sheet, "Missed for days", each => each.DaysNotLookedAt is > 1 and < Neglect.LongDays));
        int longest = sheet.Jars.Select(each => each.DaysNotLookedAt).DefaultIfEmpty().Max();
        lines.Add(Line(sheet, longest < Neglect.WeekDays ? "Missed for days" : "Missed a week or more", each =>
            each.DaysNotLookedAt >= Neglect.LongDays));
        if (longest >= Neglect.LongDays)
            lines.Add(Neglect.Words(longest));
        lines.RemoveAll(line => line.Length == 0);
    }

    private static string Line(RoundSheet sheet, string what, Func<RoundJar, bool> which)
    {
        var numbers = Numbers(sheet.Jars.Where(which)).ToList();
        bool all = numbers.Count > 1 && numbers.Count == sheet.Jars.Count();
        return numbers.Count == 0 ? "" : $"{what}: {(all ? "all" : NumberList.Say(numbers))}";
    }

    private static IEnumerable<int> Numbers(IEnumerable<RoundJar> jars) => jars.Select(each => each.Jar.Number);

    private static string Minutes(RoundSheet sheet)
    {
        int opened = sheet.Jars.Count(each => each.Opening);
        int minutes = Math.Max(1, (int)Math.Round((sheet.Jars.Count() * 0.2) + opened, MidpointRounding.AwayFromZero));
        string time = minutes == 1 ? "one minute" : string.Create(CultureInfo.InvariantCulture, $"{minutes} minutes");
        return opened == 0 ? $"{time}, no opening" : time;
    }
}
