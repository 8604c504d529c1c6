using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Service.Api.Answers;

/// <summary>Something that came in and could not be used.</summary>
/// <param name="Topic">Where it came.</param>
/// <param name="Reason">Why it could not be used.</param>
/// <param name="Count">How often.</param>
/// <param name="LastExample">What came last.</param>
/// <param name="LastReceivedAt">When.</param>
/// <param name="Explanation">What was wrong and what would be right.</param>
public sealed record RejectAnswer(string Topic, RejectReason Reason, long Count, string LastExample, Instant LastReceivedAt, string Explanation)
{
    public static RejectAnswer Of(RejectCount reject) =>
        new(reject.Last.Topic, reject.Last.Reason, reject.Count, reject.Last.Example, reject.Last.ReceivedAt, reject.Last.Explanation);
}
