using FermentWatch.Kitchen.Forwarding;
using NodaTime;

namespace FermentWatch.Service.Api.Answers;

/// <summary>Points that were left out for one reason.</summary>
/// <param name="Series">The series.</param>
/// <param name="Reason">Why.</param>
/// <param name="Count">How many.</param>
/// <param name="LastExample">The last of them.</param>
/// <param name="LastExplanation">What was said of it.</param>
/// <param name="LastAt">When that was.</param>
public sealed record NotForwardedAnswer(
    SeriesKind Series, NotForwardedReason Reason, long Count, string LastExample, string LastExplanation, Instant LastAt)
{
    public static NotForwardedAnswer Of(NotForwardedCount count) => new(
        count.Series, count.Last.Reason, count.Count, count.Last.Example, count.Last.Explanation, count.Last.At);
}
