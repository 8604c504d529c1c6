using NodaTime;

namespace FermentWatch.Kitchen.Readings;

/// <summary>What was measured over any span, in as many points as a picture or a table has room for.</summary>
public interface IReadingHistory
{
    /// <summary>
    /// Answers with at most the asked number of points. Three years cost no more than a week: what is read grows with the points and not
    /// with the readings.
    /// </summary>
    Task<MeasuredHistory> AskAsync(HistoryQuestion question, CancellationToken cancellationToken);
}

/// <summary>A question about readings that count.</summary>
/// <param name="Quantity">What was measured.</param>
/// <param name="Spans">Which sensor is meant over which stretch; those of one sensor do not overlap.</param>
/// <param name="Points">The most points to answer with, from <see cref="FewestPoints"/> on.</param>
public sealed record HistoryQuestion(Quantity Quantity, IReadOnlyList<SensorSpan> Spans, int Points)
{
    /// <summary>A span may lie across the edge of two points however long those are.</summary>
    public const int FewestPoints = 2;

    /// <summary>Whether readings may be answered one by one where they are few enough.</summary>
    public bool MayBeSingle { get; init; } = true;

    /// <summary>First instant asked about.</summary>
    public required Instant From { get; init; }

    /// <summary>The end, itself left out.</summary>
    public required Instant Until { get; init; }
}

/// <summary>What was measured.</summary>
/// <param name="Width">How long a point is; null where each is one reading.</param>
/// <param name="Points">
/// By time, those without a reading left out. A point starts at a whole multiple of its length since the Unix epoch and holds nothing from
/// outside the spans. Where several sensors measured, its value is the mean of their means.
/// </param>
public sealed record MeasuredHistory(Duration? Width, IReadOnlyList<ReadingMean> Points);
