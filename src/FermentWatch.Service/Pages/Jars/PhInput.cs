using System.Globalization;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Service.Pages.Entering;
using NodaTime;

namespace FermentWatch.Service.Pages.Jars;

/// <summary>The pH form as the browser sends it.</summary>
public sealed class PhInput
{
    /// <summary>Made when the form was shown.</summary>
    public Guid Id { get; set; }

    public string? Ph { get; set; }

    public string? Method { get; set; }

    public bool CheckedInBuffer { get; set; }

    public bool PaleBrine { get; set; }

    public bool Blended { get; set; }

    public string? At { get; set; }

    public string? Note { get; set; }

    /// <summary>Filled with a measurement that is to be corrected.</summary>
    public static PhInput From(PhMeasurement measurement, Guid id, DateTimeZone zone) => new()
    {
        Id = id,
        Ph = measurement.Ph.ToString("0.0#", CultureInfo.InvariantCulture),
        Method = measurement.Method.ToString().ToLowerInvariant(),
        CheckedInBuffer = measurement.CheckedInBuffer,
        PaleBrine = measurement.PaleBrine,
        Blended = measurement.Blended,
        At = measurement.At.InZone(zone).LocalDateTime.ToString("uuuu-MM-dd'T'HH:mm", CultureInfo.InvariantCulture),
        Note = measurement.Note,
    };

    public PhForm ToForm() => new()
    {
        Ph = Ph, Method = Method, CheckedInBuffer = CheckedInBuffer, PaleBrine = PaleBrine, Blended = Blended, At = At, Note = Note,
    };
}
