namespace FermentWatch.Intake.Outside;

/// <summary>How one try to be connected ended.</summary>
/// <param name="Problem">Why, in one sentence.</param>
/// <param name="Held">Whether there was a connection that lasted for a while.</param>
internal sealed record LinkAttempt(string Problem, bool Held);
