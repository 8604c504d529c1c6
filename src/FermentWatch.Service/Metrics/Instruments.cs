using System.Diagnostics.Metrics;
using System.Text.Json;

namespace FermentWatch.Service.Metrics;

/// <summary>
/// Instruments that are read when somebody asks, from counts kept elsewhere. Names and units as OpenTelemetry writes them: the
/// Prometheus form makes <c>a.b</c> in seconds <c>a_b_seconds</c>, and a count <c>a_b_total</c>. Each reports every value of its
/// label from the start, so that a series begins at 0.
/// </summary>
internal static class Instruments
{
    public const string Seconds = "s", Bytes = "By";

    public static void Count(this Meter meter, string name, string description, Func<long> read) =>
        meter.CreateObservableCounter(name, read, null, description);

    public static void Count<T>(this Meter meter, string name, string description, string label, Func<T, long> read) where T : struct, Enum =>
        meter.CreateObservableCounter(
            name, () => Enum.GetValues<T>().Select(value => new Measurement<long>(read(value), Label(label, value))), null, description);

    public static void Gauge(this Meter meter, string name, string? unit, string description, Func<double> read) =>
        meter.CreateObservableGauge(name, read, unit, description);

    public static void Gauge<T>(this Meter meter, string name, string? unit, string description, string label, Func<T, double> read)
        where T : struct, Enum =>
        meter.CreateObservableGauge(
            name, () => Enum.GetValues<T>().Select(value => new Measurement<double>(read(value), Label(label, value))), unit, description);

    /// <summary>A label with a value of ours, as names of labels are written.</summary>
    public static KeyValuePair<string, object?> Label<T>(string label, T value) where T : struct, Enum =>
        new(label, JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString()));
}
