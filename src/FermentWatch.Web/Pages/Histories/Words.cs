using FermentWatch.Acts.Histories;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Web.Pages.Histories;

/// <summary>What a picture of a span shows, in words.</summary>
internal static class SpanWords
{
    /// <summary>The span, its lowest and highest reading with their times, and the mean.</summary>
    public static string InASentence(HistoryAnswer answer, Household household)
    {
        IReadOnlyList<ReadingMean> points = answer.Measured.Points;
        string span = $"From {At(answer.Span.From, household)} to {At(answer.Span.Until, household)}";
        if (points.Count == 0)
            return $"{span} nothing was measured that counts.";
        ReadingMean lowest = points.MinBy(point => point.Minimum)!, highest = points.MaxBy(point => point.Maximum)!;
        string Value(double value) => ReadingWords.Value(answer.Span.Quantity, value, household.TemperatureUnit);
        return $"{span}: lowest {Value(lowest.Minimum)} ({At(lowest.Start, household)}), highest {Value(highest.Maximum)} "
            + $"({At(highest.Start, household)}), on average {Value(points.Average(point => point.Value))}.";
    }

    /// <summary>With the year, as histories go back for years.</summary>
    private static string At(Instant instant, Household household) =>
        ClockWords.WithDate(instant, household);
}
