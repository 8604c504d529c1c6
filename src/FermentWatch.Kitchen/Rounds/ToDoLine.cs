using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>One line of what is to be done now: jars that ask for the same are one line.</summary>
/// <param name="What">What to do, in a few words.</param>
/// <param name="Jars">Their numbers.</param>
/// <param name="Urgent">Whether it is shown as a warning.</param>
public sealed record ToDoLine(string What, IReadOnlyList<int> Jars, bool Urgent)
{
    private const int AtMost = 4;

    /// <summary>Whether something is wrong; else it is the day's handwork, which a round lists by itself.</summary>
    public bool IsTrouble { get; init; }

    /// <summary>What would settle it and was not done yet; null where nothing would, and for who may not settle.</summary>
    public HandlingKind? Remedy { get; init; }

    /// <summary>At most a few lines, the worst first; what is left out stands on the round.</summary>
    /// <param name="jars">The jars of a day.</param>
    /// <param name="isAdult">Whether it is for an adult; others are told of trouble only, and to call one.</param>
    public static IReadOnlyList<ToDoLine> Of(IEnumerable<RoundJar> jars, bool isAdult = true) => [.. jars
        .Select(each => (On: each, Says: isAdult ? (each.Step.Kind < StepKind.Look ? each.Step.InBrief : null)
            : each.TroubleForAChild)).Where(each => each.Says is not null)
        .GroupBy(each => (each.On.Step.Kind, each.Says, Remedy: isAdult ? each.On.State.Remedy : null)).OrderBy(like =>
            like.Key.Kind).ThenBy(like => like.Min(each => each.On.Jar.Number))
        .Take(AtMost).Select(like => new ToDoLine(like.Key.Says!, [.. like.Select(each => each.On.Jar.Number).Order()],
            like.First().On.Step.Urgent) { Remedy = like.Key.Remedy, IsTrouble = like.Key.Kind <= StepKind.SeeTo })];
}
