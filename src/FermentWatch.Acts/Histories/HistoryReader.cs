using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Acts.Histories;

/// <summary>What was measured in a place, by a sensor, or in and around a jar, for pictures, tables and the API.</summary>
public sealed class HistoryReader(IReadingHistory history, ISensorBook sensors)
{
    /// <summary>What was measured in a place by whatever stood there then.</summary>
    public async Task<MeasuredHistory> OfPlaceAsync(Guid placeId, HistorySpan span, CancellationToken cancellationToken) =>
        await AskAsync([.. SensorSpans.At(await sensors.AllAsync(cancellationToken), placeId, span.From, span.Until)], span, cancellationToken);

    /// <summary>What a sensor measured, wherever it stood.</summary>
    public Task<MeasuredHistory> OfSensorAsync(Sensor sensor, HistorySpan span, CancellationToken cancellationToken) =>
        AskAsync([new SensorSpan(sensor.Key, span.From, span.Until)], span, cancellationToken);

    /// <summary>
    /// What was measured in a jar. Of temperature and humidity, what was measured where it stood fills in for the hours without a probe of
    /// its own.
    /// </summary>
    public async Task<MeasuredHistory> OfJarAsync(Jar jar, HistorySpan span, CancellationToken cancellationToken)
    {
        IReadOnlyList<Sensor> all = await sensors.AllAsync(cancellationToken);
        IReadOnlyList<SensorSpan> own = JarSpans.InJar(jar, all, span.From, span.Until);
        if (MeasuredQuantity.Of(span.Quantity).IsByElectrode)
            return await AskAsync(own, span, cancellationToken);
        IReadOnlyList<SensorSpan> around = JarSpans.Around(jar, all, span.From, span.Until);
        if (own.Count == 0 || around.Count == 0)
            return await AskAsync([.. own, .. around], span, cancellationToken);
        MeasuredHistory inJar = await AskAsync(own, span, cancellationToken, mayBeSingle: false);
        MeasuredHistory there = await AskAsync(around, span, cancellationToken, mayBeSingle: false);
        var known = inJar.Points.Select(point => point.Start).ToHashSet();
        return inJar with
        {
            Points = [.. inJar.Points.Concat(there.Points.Where(point => !known.Contains(point.Start))).OrderBy(point => point.Start)],
        };
    }

    private Task<MeasuredHistory> AskAsync(
        IReadOnlyList<SensorSpan> spans, HistorySpan span, CancellationToken cancellationToken, bool mayBeSingle = true) =>
        history.AskAsync(
            new HistoryQuestion(span.Quantity, spans, span.Points) { From = span.From, Until = span.Until, MayBeSingle = mayBeSingle },
            cancellationToken);
}

/// <summary>What is asked of a history.</summary>
/// <param name="Quantity">What was measured.</param>
/// <param name="From">The first instant.</param>
/// <param name="Until">The end, itself left out; later than <paramref name="From"/>.</param>
/// <param name="Points">The most points to answer with, 2 at least.</param>
public sealed record HistorySpan(Quantity Quantity, Instant From, Instant Until, int Points);
