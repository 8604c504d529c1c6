using System.Globalization;
using FermentWatch.Acts.Jars;
using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Web.Pages.Jars;

/// <summary>The pH form as the browser sends it.</summary>
public sealed class PhInput
{
    /// <summary>Made when the form was shown.</summary>
    public Guid Id { get; set; }

    public string? Ph { get; set; }

    public string? Method { get; set; }

    public bool CheckedInBuffer { get; set; }

    /// <summary><c>pale</c> or <c>dark</c>; must be said of a strip.</summary>
    public string? Brine { get; set; }

    /// <summary>What is said of a form that was sent before with another reading.</summary>
    public FermentWatch.Kitchen.RoundAnswers.Again Again { get; set; }

    public bool Blended { get; set; }

    public string? At { get; set; }

    public string? SampleTemperature { get; set; }

    public string? Note { get; set; }

    /// <summary>Filled with a measurement that is to be corrected.</summary>
    public static PhInput From(PhMeasurement measurement, Guid id, DateTimeZone zone) => new()
    {
        Id = id,
        Ph = measurement.Ph.ToString("0.0#", CultureInfo.InvariantCulture),
        Method = measurement.Method.ToString().ToLowerInvariant(),
        CheckedInBuffer = measurement.CheckedInBuffer,
        Brine = measurement.Method != FermentWatch.Kinetics.Observation.PhMethod.Strip ? null : measurement.PaleBrine ? "pale" : "dark",
        Blended = measurement.Blended,
        At = measurement.At.InZone(zone).LocalDateTime.ToString("uuuu-MM-dd'T'HH:mm", CultureInfo.InvariantCulture),
        SampleTemperature = measurement.SampleCelsius is { } celsius ? celsius.ToString("0.#", CultureInfo.InvariantCulture) + " C" : null,
        Note = measurement.Note,
    };

    public PhForm ToForm() => new()
    {
        Ph = Ph, Method = Method, CheckedInBuffer = CheckedInBuffer, PaleBrine = Brine switch { "pale" => true, "dark" => false, _ => null },
            Blended = Blended, At = At, SampleTemperature = SampleTemperature, Note = Note,
    };
}
