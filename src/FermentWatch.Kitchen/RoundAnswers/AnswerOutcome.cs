using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Kitchen.RoundAnswers;

/// <summary>What an answer comes to.</summary>
/// <param name="Observations">What is to be filed; empty if there is nothing new or anything was wrong.</param>
/// <param name="Known">Jars that somebody had answered for before, with what that was, in one line each.</param>
/// <param name="Refusals">What was wrong.</param>
public sealed record AnswerOutcome(
    IReadOnlyList<Observation> Observations, IReadOnlyList<string> Known, IReadOnlyList<Refusal> Refusals)
{
    /// <summary>A question, where the form was sent before with other content and nobody said yet what this is; else null.</summary>
    public string? Asked { get; init; }

    /// <summary>The observation whose place the new one takes; null where it takes none.</summary>
    public Guid? Replaces { get; init; }
}

/// <summary>What somebody says of a form that was sent before with other content.</summary>
public enum Again
{
    /// <summary>Nothing yet: it is asked about.</summary>
    NotSaid = 0,

    /// <summary>What was sent before was wrong; this takes its place.</summary>
    Correction = 1,

    /// <summary>Both are meant.</summary>
    Another = 2,
}
