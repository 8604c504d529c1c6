namespace FermentWatch.Service.Api.Answers;

/// <summary>What became of an answer.</summary>
/// <param name="Filed">How many observations were filed.</param>
/// <param name="Known">What somebody had said before, in one line each.</param>
/// <param name="AskedAgainAt">When it is asked again, where it was put off.</param>
public sealed record AnswerTaken(int Filed, IReadOnlyList<string> Known, string? AskedAgainAt = null);
