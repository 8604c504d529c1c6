using FermentWatch.Kitchen.Words;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>One line of what is to be done now: jars that ask for the same are one line.</summary>
/// <param name="What">What to do, in a few words.</param>
/// <param name="Jars">Their numbers.</param>
/// <param name="Urgent">Whether it is shown as a warning.</param>
public sealed record ToDoLine(string What, IReadOnlyList<int> Jars, bool Urgent)
{
    private const int AtMost = 4;

    /// <summary>At most a few lines, the worst first; what is left out stands on the round.</summary>
    public static IReadOnlyList<ToDoLine> Of(IEnumerable<RoundJar> jars) => [.. jars.Where(each => each.Step.Kind < StepKind.Look)
        .GroupBy(each => (each.Step.Kind, each.Step.InBrief)).OrderBy(like => like.Key.Kind).ThenBy(like => like.Min(each => each.Jar.Number))
        .Take(AtMost).Select(like => new ToDoLine(like.Key.InBrief, [.. like.Select(each => each.Jar.Number).Order()], like.First().Step.Urgent))];
}
