using FermentWatch.Acts.Histories;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Web.Api.Answers;

/// <summary>What was measured, in columns of one length: a point is what stands at one place of each.</summary>
/// <param name="Measured">The place, sensor or jar in words.</param>
/// <param name="Quantity">What was measured.</param>
/// <param name="Unit">The unit of the values, a SenML symbol: <c>Cel</c>, <c>pH</c>, <c>mV</c>, <c>%RH</c>.</param>
/// <param name="From">The first instant asked about.</param>
/// <param name="To">The end, itself left out.</param>
/// <param name="PointSeconds">How long a point is; null where each is one reading.</param>
/// <param name="At">Where each point starts; those without a reading are left out.</param>
/// <param name="MeanInUnitOfQuantity">The mean of each; of several sensors the mean of their means.</param>
/// <param name="MinimumInUnitOfQuantity">The smallest reading in it; null where each is one reading.</param>
/// <param name="MaximumInUnitOfQuantity">The largest; null likewise.</param>
/// <param name="Readings">How many it holds; null likewise.</param>
public sealed record MeasuredAnswer(
    string Measured, Quantity Quantity, string Unit, Instant From, Instant To, long? PointSeconds, DateTime[] At,
    double[] MeanInUnitOfQuantity, double[]? MinimumInUnitOfQuantity, double[]? MaximumInUnitOfQuantity, int[]? Readings)
{
    // Nothing that measures a kitchen tells more; the digits of a mean beyond it are three fifths of the answer.
    private const int Digits = 4;

    internal static MeasuredAnswer Of(HistoryAnswer answer)
    {
        IReadOnlyList<ReadingMean> points = answer.Measured.Points;
        bool isFolded = answer.Measured.Width is not null;
        return new(answer.Of, answer.Span.Quantity, MeasuredQuantity.Of(answer.Span.Quantity).StoredUnit.Symbol, answer.Span.From,
            answer.Span.Until, (long?)answer.Measured.Width?.TotalSeconds, Column(points, point => point.Start.ToDateTimeUtc()),
            Column(points, point => Round(point.Value)), isFolded ? Column(points, point => Round(point.Minimum)) : null,
            isFolded ? Column(points, point => Round(point.Maximum)) : null, isFolded ? Column(points, point => point.Count) : null);
    }

    private static T[] Column<T>(IReadOnlyList<ReadingMean> points, Func<ReadingMean, T> value)
    {
        var column = new T[points.Count];
        for (int i = 0; i < column.Length; i++)
            column[i] = value(points[i]);
        return column;
    }

    internal static double Round(double value) => Math.Round(value, Digits);
}
