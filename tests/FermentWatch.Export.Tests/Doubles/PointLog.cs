using FermentWatch.Export.Forwarding;
using FermentWatch.Kitchen.Forwarding;
using InfluxDB.Client.Api.Domain;
using InfluxDB.Client.Writes;
using NodaTime;

namespace FermentWatch.Export.Tests.Doubles;

/// <summary>A log in memory: entry n is at place n, and its point has the value n. Entries of a negative value have no owner.</summary>
internal sealed class PointLog(SeriesKind kind) : Series(kind)
{
    private readonly List<double> _values = [];

    public void Add(params double[] values) => _values.AddRange(values);

    public override Task<PointSlice> AfterAsync(long cursor, int atMost, CancellationToken cancellationToken)
    {
        var values = _values.Skip((int)cursor).Take(atMost).ToList();
        return Task.FromResult(new PointSlice(
            [.. values.Where(value => value >= 0).Select(Point)],
            [.. values.Where(value => value < 0)
                .Select(value => new NotForwarded(NotForwardedReason.UnknownOwner, $"{value}", "nobody", Instant.MinValue))],
            cursor + values.Count));
    }

    public override Task<PointData?> NewestAsync(CancellationToken cancellationToken) =>
        Task.FromResult(_values.Count == 0 ? null : Point(_values[^1]));

    public override Task<long> EndAsync(CancellationToken cancellationToken) => Task.FromResult((long)_values.Count);

    private PointData Point(double value) =>
        PointData.Measurement(Kind.ToString()).Field("value", value).Timestamp((long)value, WritePrecision.Ms);
}
