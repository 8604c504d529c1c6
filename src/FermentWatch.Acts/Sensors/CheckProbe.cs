using System.Globalization;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Sensors;

/// <summary>Where checks of probes in buffers are handed in, by the pages and the API.</summary>
[OpenToRecorders]
public sealed class CheckProbe(IProbeBook probes, IHouseholdBook households, WrittenDown written, TimeProvider clock)
{
    /// <summary>Files a check, or tells everything that is wrong with it; what was read since is judged again.</summary>
    public async Task<CalibrationEntry> EnterAsync(Sensor sensor, CalibrationForm form, EntryMark mark, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        CalibrationEntry entry = CalibrationEntry.Read(form, sensor, household, clock.GetUtcNow().ToInstant(), mark);
        if (entry.Check is { } check)
        {
            await probes.AddAsync(check, cancellationToken);
            written.SayChecks();
        }
        return entry;
    }

    /// <summary>Takes a check back, and what was read since is judged again. False if there is none of this id of this sensor.</summary>
    public async Task<bool> TakeBackAsync(Sensor sensor, Guid check, string by, CancellationToken cancellationToken)
    {
        if (!(await probes.FiledAsync(sensor.Id, cancellationToken)).Any(each => each.Id == check))
            return false;
        await probes.TakeBackAsync(check, clock.GetUtcNow().ToInstant(), by, cancellationToken);
        written.SayChecks();
        return true;
    }

    /// <summary>The checks of a sensor's probe, the last first, those taken back among them.</summary>
    public async Task<IReadOnlyList<ProbeCheck>> OfAsync(Sensor sensor, CancellationToken cancellationToken) =>
        [.. (await probes.FiledAsync(sensor.Id, cancellationToken)).Reverse()];
}

/// <summary>What somebody typed of a probe in buffers, as typed.</summary>
public sealed record CalibrationForm
{
    /// <summary>What it shows: <c>mV</c> or <c>pH</c>.</summary>
    public string? Shows { get; init; }

    /// <summary>Two or three buffers.</summary>
    public IReadOnlyList<BufferForm> Buffers { get; init; } = [];

    /// <summary>When, on the household's clock; empty is now.</summary>
    public string? At { get; init; }
}

/// <summary>What a probe showed in one buffer, as typed. All empty is no buffer.</summary>
public sealed record BufferForm
{
    /// <summary>The buffer by its pH at 25 C, as the bottle says: <c>4.00</c>, <c>6.86</c>, <c>7.00</c>, <c>9.18</c>, <c>10.01</c>; or its
    /// name.</summary>
    public string? Buffer { get; init; }

    /// <summary>What the probe showed, in millivolts or pH.</summary>
    public string? Shown { get; init; }

    /// <summary>The temperature of the buffer.</summary>
    public string? Temperature { get; init; }
}

/// <summary>A calibration form that was read: the check, or every field that was wrong.</summary>
/// <param name="Check">The check; null if anything was wrong.</param>
/// <param name="Refusals">What was wrong.</param>
public sealed record CalibrationEntry(ProbeCheck? Check, IReadOnlyList<Refusal> Refusals)
{
    /// <summary>Buffers as the bottle names them.</summary>
    public static IReadOnlyList<(string Label, ReferenceBuffer Buffer)> Bottles { get; } =
    [
        ("4.00", ReferenceBuffer.Phthalate4), ("6.86", ReferenceBuffer.Phosphate686), ("7.00", ReferenceBuffer.Technical7),
        ("9.18", ReferenceBuffer.Borax918), ("10.01", ReferenceBuffer.Carbonate10),
    ];

    private static readonly Duration OldestEntry = Duration.FromDays(31);

    /// <summary>Reads a form.</summary>
    /// <param name="form">What was typed.</param>
    /// <param name="sensor">The sensor whose probe it is.</param>
    /// <param name="household">For its zone and its unit of temperature.</param>
    /// <param name="now">The present.</param>
    /// <param name="mark">Who enters it and under which id; the same id again changes nothing.</param>
    public static CalibrationEntry Read(CalibrationForm form, Sensor sensor, Household household, Instant now, EntryMark mark)
    {
        var reader = new FieldReader();
        bool showsPh = (form.Shows ?? "").Trim().Equals("pH", StringComparison.OrdinalIgnoreCase);
        if (!showsPh && !(form.Shows ?? "").Trim().Equals("mV", StringComparison.OrdinalIgnoreCase))
            reader.Refuse("shows", form.Shows, "mV or pH would be right");
        var points = new List<BufferReading>();
        for (int i = 0; i < form.Buffers.Count; i++)
            if (!IsEmpty(form.Buffers[i]))
                points.Add(ReadBuffer(form.Buffers[i], i + 1, showsPh, household, reader));
        Instant at = reader.ReadPast("when", form.At, household.Zone, now, now - OldestEntry);
        if (reader.Refusals.Count == 0 && ProbeCalibration.Of(points, at, out string? wrong) is null)
            reader.Refuse("buffers", string.Join(", ", points.Select(point => point.Ph.ToString("0.00", CultureInfo.InvariantCulture))), wrong!);
        return reader.Refusals.Count > 0
            ? new CalibrationEntry(null, reader.Refusals)
            : new CalibrationEntry(new ProbeCheck { Id = mark.Id, SensorId = sensor.Id, At = at, EnteredAt = now, By = mark.By, Points = points },
                []);
    }

    private static BufferReading ReadBuffer(BufferForm form, int number, bool showsPh, Household household, FieldReader reader)
    {
        string Field(string of) => string.Create(CultureInfo.InvariantCulture, $"{of} {number}");
        ReferenceBuffer buffer = ReadBottle(Field("buffer"), form.Buffer, reader);
        double shown = showsPh
            ? reader.Read(Field("shown"), form.Shown, Amount.Number, null, 0, 14, "a pH from 0 to 14")
            : reader.Read(Field("shown"), form.Shown, Amount.Number, null, -1000, 1000, "millivolts from -1000 to 1000");
        double celsius = reader.Read(Field("temperature"), form.Temperature, Amount.Celsius,
            household.TemperatureUnit == TemperatureUnit.Fahrenheit ? "F" : "C", BufferTable.LowestCelsius, BufferTable.HighestCelsius,
                "0C to 50C, or 32F to 122F,");
        return showsPh ? BufferReading.OfShownPh(buffer, shown, celsius) : new BufferReading(buffer, shown, celsius);
    }

    private static ReferenceBuffer ReadBottle(string field, string? typed, FieldReader reader)
    {
        foreach ((string label, ReferenceBuffer buffer) in Bottles)
            if (label == typed?.Trim() || buffer.ToString().Equals(typed?.Trim(), StringComparison.OrdinalIgnoreCase))
                return buffer;
        reader.Refuse(field, typed, $"one of {string.Join(", ", Bottles.Select(bottle => bottle.Label))} would be right, as the bottle says");
        return ReferenceBuffer.Technical7;
    }

    private static bool IsEmpty(BufferForm form) => string.IsNullOrWhiteSpace(form.Shown) && string.IsNullOrWhiteSpace(form.Temperature);
}
