using System.Globalization;
using FermentWatch.Acts.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Kitchen.Words;
using NodaTime;
using static FermentWatch.Kinetics.Sentence;

namespace FermentWatch.Web.Pages.Jars;

/// <summary>The jars of the household by what they need and where they stand.</summary>
/// <param name="Name">What the group is called.</param>
/// <param name="Jars">Its jars: the most pressing first, then by the day of what is next.</param>
internal sealed record JarGroup(string Name, IReadOnlyList<JarView> Jars)
{
    /// <summary>More rows of one list nobody reads on a phone.</summary>
    public const int MostRows = 100;

    private const int SoonDays = 6;
    private static readonly string[] Names = ["Look at", "Ready soon", "Working", "In the cold"];

    /// <summary>Groups that hold any, in order.</summary>
    public static IReadOnlyList<JarGroup> Of(IEnumerable<JarView> jars) =>
        [.. jars.GroupBy(Place).OrderBy(group => group.Key).Select(group => new JarGroup(Names[group.Key],
            [.. group.OrderBy(view => view.Next.Kind < StepKind.Measure ? (int)view.Next.Kind : int.MaxValue)
                .ThenBy(view => view.Jar.Stage == JarStage.Cold ? view.Calendar.Date(0) : view.TasteFrom).ThenBy(view => view.Jar.Number)]))];

    /// <summary>What is said of jars of a list that are not shown; null where all are.</summary>
    public static string? NotShown(int count) => count <= MostRows ? null
        : string.Create(CultureInfo.InvariantCulture, $"{count - MostRows:N0} more: find them by number, vegetable or shelf.");

    /// <summary>The next thing of a jar and its day, in a few words.</summary>
    public static string Next(JarView view)
    {
        if (IsLookedAt(view))
            return view.Next.InBrief is ['p', 'H', ..] ph ? ph : Capital(view.Next.InBrief);
        if (view.Jar.Stage == JarStage.Cold)
            return $"In the cold, day {view.Calendar.DayNumber}";
        if (view.Next.Kind == StepKind.Decide)
            return "Cold, eat or leave?";
        if (view.Today.Taste is not { From: { } from } ask)
            return $"Day {view.Calendar.DayNumber}{(view.Today.Taste is { SaidRight: true } ? ", tasted right" : "")}";
        string? when = from <= view.Calendar.Today ? null : DateWords.Name(from, view.Calendar.Today);
        if (ask.By != view.Jar.Number)
            return when is null ? $"As jar {ask.By}" : $"As jar {ask.By}, {when}";
        // What the round does not ask for today is no order here either.
        return when is not null ? $"Taste {when}" : ask.Kind == TasteAskKind.Taste ? "Taste now" : "Worth tasting";
    }

    /// <summary>Whether the next thing is handwork of these days.</summary>
    public static bool IsSoon(JarView view) => Place(view) == 1;

    /// <summary>Whether something is wrong with it, or it is watched closely.</summary>
    public static bool IsLookedAt(JarView view) => view.Next.Urgent || view.Next.Kind == StepKind.SeeTo || view.Trouble.CloserWatch;

    private static int Place(JarView view) => IsLookedAt(view) ? 0
        : view.Jar.Stage == JarStage.Cold ? 3
        : view.Next.Kind == StepKind.Decide || view.Today.Taste is { From: { } from } && from <= view.Calendar.Today.PlusDays(SoonDays) ? 1 : 2;
}

/// <summary>Seven days from today, with the jars that are tasted on each: on the day from which it is worth while, dots until nine in ten
/// are there.</summary>
/// <param name="Date">The day.</param>
/// <param name="Jars">Jars whose first tasting day it is; today also those from before.</param>
/// <param name="Perhaps">Whether a jar of an earlier day may not be there until then.</param>
internal sealed record TastingDay(LocalDate Date, IReadOnlyList<int> Jars, bool Perhaps)
{
    private const int Days = 7;

    /// <summary>The week; nothing where no jar is tasted within it.</summary>
    public static IReadOnlyList<TastingDay> Of(IReadOnlyList<JarView> jars)
    {
        var asked = jars.Where(view => view.Jar.Stage == JarStage.Fermenting && !JarGroup.IsLookedAt(view)
            && view.Today.Taste is { From: not null } ask && ask.By == view.Jar.Number && !ask.IsPast(view.Calendar.Today)).ToList();
        if (asked.Count == 0)
            return [];
        LocalDate today = asked[0].Calendar.Today;
        LocalDate From(JarView view) => LocalDate.Max(today, view.Today.Taste!.From!.Value);
        TastingDay[] week = [.. Enumerable.Range(0, Days).Select(today.PlusDays).Select(date => new TastingDay(date,
            [.. asked.Where(view => From(view) == date).Select(view => view.Jar.Number)],
            asked.Exists(view => From(view) < date && view.Today.Taste!.PastFrom is { } past && date < past)))];
        return week.Any(day => day.Jars.Count > 0) ? week : [];
    }
}
