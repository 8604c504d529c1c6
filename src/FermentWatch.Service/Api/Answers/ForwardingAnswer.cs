namespace FermentWatch.Service.Api.Answers;

/// <summary>How the passing on of series stands.</summary>
/// <param name="Enabled">Whether there is a receiver.</param>
/// <param name="Trouble">Why points wait; null when none do.</param>
/// <param name="LeftOut">What was left out, by series and reason.</param>
public sealed record ForwardingAnswer(bool Enabled, string? Trouble, IReadOnlyList<NotForwardedAnswer> LeftOut);
