using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Jars;

/// <summary>Enters a pH of a jar.</summary>
[OpenToRecorders]
public sealed class MeasurePh(IHouseholdBook households, EntryFiling filing, TimeProvider clock)
{
    /// <summary>What was written down, what was wrong, or what is asked.</summary>
    /// <param name="jar">The jar, whole.</param>
    /// <param name="form">What was typed.</param>
    /// <param name="mark">Who enters it and under which id.</param>
    /// <param name="corrects">The observation whose place it takes, which is taken back; null where it takes none.</param>
    /// <param name="cancellationToken">Gives up before anything is filed.</param>
    public async Task<PhEntry> DoAsync(Jar jar, PhForm form, EntryMark mark, Guid? corrects, CancellationToken cancellationToken)
    {
        if (ChildRules.Measuring(mark.Role) is { } refusal)
            return new PhEntry(null, [refusal]);
        Household household = await households.ReadAsync(cancellationToken);
        PhEntry entry = PhEntry.Read(form, jar, household, clock.GetUtcNow().ToInstant(), mark);
        if (entry.Measurement is not { } read)
            return entry;
        var sent = SentBefore.Of(read, jar, mark, each => each.Content, read.Under);
        if (sent.Asked is null && !sent.IsFiled)
        {
            await NoteToolAsync(household, read.Method, cancellationToken);
            await filing.FileAsync(jar, sent.Observation, sent.Corrects ?? corrects, mark, cancellationToken);
        }
        return entry with { Measurement = sent.Observation, Asked = sent.Asked };
    }

    /// <summary>Whoever enters a pH has something to measure with; the household page says otherwise any day.</summary>
    private async Task NoteToolAsync(Household household, PhMethod method, CancellationToken cancellationToken)
    {
        if (household.Measures)
            return;
        household.PhTool = method switch { PhMethod.Meter => PhTool.Meter, PhMethod.Probe => PhTool.Probe, _ => PhTool.Strips };
        await households.WriteAsync(household, cancellationToken);
    }
}

/// <summary>What somebody typed to enter a pH, as typed.</summary>
public sealed record PhForm
{
    /// <summary>The pH, 2 to 9.</summary>
    public string? Ph { get; init; }

    /// <summary><c>meter</c>, <c>probe</c> or <c>strip</c>.</summary>
    public string? Method { get; init; }

    /// <summary>Whether the meter or probe was checked in buffer on the same day.</summary>
    public bool CheckedInBuffer { get; init; }

    /// <summary>Whether the brine was pale enough to read a strip; must be said of a strip.</summary>
    public bool? PaleBrine { get; init; }

    /// <summary>Whether solids and brine were blended.</summary>
    public bool Blended { get; init; }

    /// <summary>When, on the household's clock (<c>2026-10-04</c> or <c>2026-10-04T18:30</c>); empty is now.</summary>
    public string? At { get; init; }

    /// <summary>How warm the sample was, in the household's unit where none is typed; empty where nobody looked.</summary>
    public string? SampleTemperature { get; init; }

    public string? Note { get; init; }
}

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
    /// <param name="entry">Who enters it, under which id, and when it was typed; the same id again changes nothing.</param>
    public static PhEntry Read(PhForm form, Jar jar, Household household, Instant now, EntryMark entry)
    {
        DateTimeZone zone = household.Zone;
        var reader = new FieldReader();
        double ph = reader.Read("ph", form.Ph, Amount.Number, null, 2, 9, "a pH from 2 to 9");
        PhMethod method = ReadMethod(form.Method, reader);
        Instant at = reader.ReadPast("when", form.At, zone, entry.At(now), DayOf(jar, zone));
        if (method == PhMethod.Strip && form.PaleBrine is null && !string.IsNullOrWhiteSpace(form.Method))
            reader.Refuse("brine", null, "pale or dark brine? A strip counts for the acid line in pale brine only");
        double? sample = string.IsNullOrWhiteSpace(form.SampleTemperature) ? null
            : reader.Read("sample temperature", form.SampleTemperature, Amount.Celsius,
                household.TemperatureUnit == TemperatureUnit.Fahrenheit ? "F" : "C", 0, 60, "0 to 60 C");
        string note = reader.ReadNote("note", form.Note);
        if (reader.Refusals.Count > 0)
            return new PhEntry(null, reader.Refusals);
        var measurement = new PhMeasurement
        {
            Id = entry.Id, JarId = jar.Id, At = Instant.Max(at, jar.PackedAt), EnteredAt = now, By = entry.By, ById = entry.Who.AccountId,
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
