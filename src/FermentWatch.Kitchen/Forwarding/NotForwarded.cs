using NodaTime;

namespace FermentWatch.Kitchen.Forwarding;

/// <summary>One point that was left out.</summary>
/// <param name="Reason">The name under which it is counted.</param>
/// <param name="Example">The point as it would have gone out, or what is known of it.</param>
/// <param name="Explanation">What the receiver said, or what is missing.</param>
/// <param name="At">When it was left out.</param>
public sealed record NotForwarded(NotForwardedReason Reason, string Example, string Explanation, Instant At);
