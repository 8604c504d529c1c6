using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Typed;
using NodaTime;

namespace FermentWatch.Acts.Jars;

/// <summary>A pH form that was read: the measurement, or every field that was wrong.</summary>
/// <param name="Measurement">The measurement; null if anything was wrong.</param>
/// <param name="Refusals">What was wrong.</param>
public sealed record PhEntry(PhMeasurement? Measurement, IReadOnlyList<Refusal> Refusals)
{
    /// <summary>A question, where the form was sent before with another reading; else null.</summary>
    public string? Asked { get; init; }

    /// <summary>Reads the form.</summary>
    /// <param name="form">What was typed.</param>
    /// <param name="jar">The jar it was measured in.</param>
    /// <param name="household">For its zone and unit.</param>
    /// <param name="now">The present.</param>
    /// <param name="entry">Who enters it and under which id; the same id again changes nothing.</param>
    public static PhEntry Read(PhForm form, Jar jar, Household household, Instant now, EntryMark entry)
    {
        DateTimeZone zone = household.Zone;
        var reader = new FieldReader();
        double ph = reader.Read("ph", form.Ph, Amount.Number, null, 2, 9, "a pH from 2 to 9");
        PhMethod method = ReadMethod(form.Method, reader);
        Instant at = reader.ReadPast("when", form.At, zone, now, DayOf(jar, zone));
        if (method == PhMethod.Strip && form.PaleBrine is null && !string.IsNullOrWhiteSpace(form.Method))
            reader.Refuse("brine", null, "pale or dark brine? A strip counts for the acid line in pale brine only");
        double? sample = string.IsNullOrWhiteSpace(form.SampleTemperature) ? null
            : reader.Read("sample temperature", form.SampleTemperature, Amount.Celsius, household.TemperatureUnit == TemperatureUnit.Fahrenheit ? "F" : "C", 0, 60, "0 to 60 C");
        string note = reader.ReadNote("note", form.Note);
        if (reader.Refusals.Count > 0)
            return new PhEntry(null, reader.Refusals);
        var measurement = new PhMeasurement
        {
            Id = entry.Id, JarId = jar.Id, At = Instant.Max(at, jar.PackedAt), EnteredAt = now, By = entry.By,
            Note = note.Length == 0 ? null : note, Ph = ph, Method = method,
            CheckedInBuffer = method != PhMethod.Strip && form.CheckedInBuffer,
            PaleBrine = method == PhMethod.Strip && form.PaleBrine == true, Blended = form.Blended, SampleCelsius = sample,
        };
        return new PhEntry(measurement, []);
    }

    private static PhMethod ReadMethod(string? typed, FieldReader reader)
    {
        if (string.IsNullOrWhiteSpace(typed))
            reader.Refuse("method", typed, "one of meter, probe or strip would be right");
        return reader.ReadChoice("method", typed, PhMethod.Strip);
    }

    /// <summary>A date alone means noon, which on the day of packing may lie before the packing.</summary>
    private static Instant DayOf(Jar jar, DateTimeZone zone) => zone.AtStartOfDay(jar.PackedAt.InZone(zone).Date).ToInstant();
}
