using NodaTime;

namespace FermentWatch.Web.Api.Answers;

/// <summary>One fact of a jar that was put right or changed.</summary>
/// <param name="Field">Which fact.</param>
/// <param name="Before">What stood before, in words.</param>
/// <param name="After">What stands since, in words.</param>
/// <param name="Since">Since when it is so; null where it was wrong from the beginning.</param>
/// <param name="EnteredAt">When it was put right.</param>
/// <param name="By">Who did.</param>
public sealed record CorrectionAnswer(string Field, string Before, string After, Instant? Since, Instant EnteredAt, string By);
