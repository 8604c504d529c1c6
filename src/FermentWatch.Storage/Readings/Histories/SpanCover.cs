using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Storage.Readings.Histories;

/// <summary>A piece of a span that is read from one table.</summary>
/// <param name="RollUp">The roll-up whose buckets fill it; null for the readings themselves.</param>
/// <param name="FromMs">Its beginning, milliseconds since the Unix epoch.</param>
/// <param name="UntilMs">Its end, itself left out.</param>
internal readonly record struct SpanPiece(MeanSpan? RollUp, long FromMs, long UntilMs);

/// <summary>Covers a span by whole buckets, long ones inside and ever shorter ones towards its ends, so that nothing beyond it is read.</summary>
internal static class SpanCover
{
    /// <summary>The pieces, by time.</summary>
    /// <param name="longest">The longest roll-up to read.</param>
    /// <param name="fromMs">Beginning of the span.</param>
    /// <param name="untilMs">Its end, itself left out.</param>
    internal static IEnumerable<SpanPiece> Of(MeanSpan longest, long fromMs, long untilMs) =>
        Of(PointWidth.RollUps.AsMemory(Array.IndexOf(PointWidth.RollUps, longest)), fromMs, untilMs);

    private static IEnumerable<SpanPiece> Of(ReadOnlyMemory<MeanSpan> rollUps, long fromMs, long untilMs)
    {
        if (fromMs >= untilMs)
            return [];
        if (rollUps.Length == 0)
            return [new SpanPiece(null, fromMs, untilMs)];
        MeanSpan longest = rollUps.Span[0];
        long innerUntil = Bucket.StartMs(longest, untilMs);
        long before = Bucket.StartMs(longest, fromMs);
        long innerFrom = before == fromMs ? fromMs : before + Bucket.LengthMs(longest);
        return innerFrom >= innerUntil
            ? Of(rollUps[1..], fromMs, untilMs)
            : Of(rollUps[1..], fromMs, innerFrom).Append(new SpanPiece(longest, innerFrom, innerUntil))
                .Concat(Of(rollUps[1..], innerUntil, untilMs));
    }
}
