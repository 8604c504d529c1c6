using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Kitchen.Probes;

/// <summary>How things stand with a sensor's pH probe.</summary>
/// <param name="Calibration">Its last calibration; null if there was none.</param>
/// <param name="Drift">How it changed since the calibration before; null if there was none.</param>
/// <param name="Ph">The pH of its last reading by that calibration; as the sensor said it where there is none; null where that is not a pH.</param>
/// <param name="SampleCelsius">The temperature that was taken for the sample.</param>
/// <param name="SampleIsAssumed">Whether that temperature was assumed, because the sensor itself measured none near that time.</param>
/// <param name="Weight">What the reading is worth.</param>
public sealed record ProbeStanding(
    ProbeCalibration? Calibration, ProbeDrift? Drift, double? Ph, double SampleCelsius, bool SampleIsAssumed, ProbeWeight Weight)
{
    /// <summary>Taken for a sample whose temperature nobody measured: a kitchen's.</summary>
    public const double AssumedCelsius = 20;

    private static readonly Duration SameSample = Duration.FromHours(1);

    /// <summary>The standing of a sensor that reports pH or millivolts; null for others.</summary>
    /// <param name="sensor">The sensor.</param>
    /// <param name="last">Its last reading of each quantity.</param>
    /// <param name="checks">What probes showed in buffers.</param>
    /// <param name="now">The present.</param>
    public static ProbeStanding? Of(Sensor sensor, IReadOnlyList<JudgedReading> last, IEnumerable<ProbeCheck> checks, Instant now)
    {
        if (last.Where(entry => MeasuredQuantity.Of(entry.Reading.Quantity).IsByElectrode).MaxBy(entry =>
            entry.Reading.MeasuredAt)?.Reading is not { } reading)
            return null;
        ProbeCalibration[] calibrations =
            [.. checks.Where(check => check.SensorId == sensor.Id).OrderBy(check => check.At).ThenBy(check => check.Id).Select(check =>
                check.Calibration)];
        ProbeCalibration? holds = calibrations.LastOrDefault(calibration => calibration.At <= reading.MeasuredAt);
        double? measured = last.FirstOrDefault(entry => entry.Reading.Quantity == Quantity.Temperature
            && entry.Verdict is Verdict.Counts or Verdict.Pending && Near(entry.Reading.MeasuredAt, reading.MeasuredAt))?.Reading.Value;
        double celsius = measured ?? AssumedCelsius;
        bool leftStanding = sensor.PlacementAt(now)?.JarId is not null;
        return new ProbeStanding(
            calibrations.LastOrDefault(), calibrations.Length > 1 ? ProbeDrift.Between(calibrations[^2], calibrations[^1]) : null,
            PhOf(reading, holds, celsius), celsius, measured is null, ProbeWeighing.Weigh(holds, reading.MeasuredAt, celsius, leftStanding));
    }

    private static double? PhOf(Reading reading, ProbeCalibration? calibration, double celsius)
    {
        if (calibration is null)
            return reading.Quantity == Quantity.Ph ? reading.Value : null;
        // A sensor that says pH worked it out as for an ideal probe; that way back, and then by its own calibration.
        double millivolts = reading.Quantity == Quantity.Millivolts
            ? reading.Value
            : -Nernst.MillivoltsPerPh(celsius) * (reading.Value - BufferReading.NeutralPh);
        return calibration.PhOf(millivolts, celsius);
    }

    private static bool Near(Instant one, Instant other) => one - other < SameSample && other - one < SameSample;
}
