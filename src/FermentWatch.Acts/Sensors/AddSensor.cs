using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Acts.Sensors;

/// <summary>
/// Adds a sensor by a form. The sensor bears the form's id: a form sent twice is one sensor, also over a restart. Its password cannot be
/// shown again, so that the second sending makes another; what the first answer said, which nobody may have seen, lets nobody in.
/// </summary>
public sealed class AddSensor(ISensorBook sensors, AdmitGear gear, GiveSensor give, ChangeSensor change) : IDisposable
{
    private readonly SemaphoreSlim _turn = new(1, 1);

    /// <summary>Adds it, or tells every field that is wrong.</summary>
    public async Task<(AddedSensor? Added, IReadOnlyList<Refusal> Refusals)> DoAsync(AddSensorForm form, EntryMark mark,
        CancellationToken cancellationToken)
    {
        await _turn.WaitAsync(cancellationToken);
        try
        {
            return (await sensors.AllAsync(cancellationToken)).FirstOrDefault(sensor => sensor.Id == mark.Id) is { } before
                ? await AgainAsync(before, form, cancellationToken)
                : await AddAsync(form, mark, cancellationToken);
        }
        finally
        {
            _turn.Release();
        }
    }

    public void Dispose() => _turn.Dispose();

    private async Task<(AddedSensor?, IReadOnlyList<Refusal>)> AddAsync(AddSensorForm form, EntryMark mark, CancellationToken cancellationToken)
    {
        bool stands = !string.IsNullOrWhiteSpace(form.Where);
        (SensorPlacement? placement, IReadOnlyList<Refusal> wrongPlace) = stands ? await give.ReadWhereAsync(form.Where, cancellationToken)
            : (null, []);
        if (wrongPlace.Count > 0)
            return (null, [.. AdmitGear.WrongName(form.Name) is { } wrongName ? [wrongName] : (Refusal[])[], .. wrongPlace]);
        (AddedSensor? added, IReadOnlyList<Refusal> refusals) = await gear.AddAsync(
            new AddInput(form.Name ?? "", null, null, mark.Who, mark.Id == Guid.Empty ? null : mark.Id), cancellationToken);
        if (added?.Sensor is { } sensor && placement is not null)
            await give.GiveAsync(sensor, placement, cancellationToken);
        return (added, refusals);
    }

    private async Task<(AddedSensor?, IReadOnlyList<Refusal>)> AgainAsync(Sensor before, AddSensorForm form, CancellationToken cancellationToken)
    {
        if (before.Name != (form.Name ?? "").Trim() || before.RemovedAt is not null)
            return (null, [new Refusal("name", form.Name ?? "nothing",
                $"this form has added '{before.Name}' already: load the page again for another sensor")]);
        return await change.NewPasswordAsync(before, cancellationToken);
    }
}

/// <summary>What somebody typed to add a sensor.</summary>
public sealed record AddSensorForm
{
    /// <summary>What the household calls it.</summary>
    public string? Name { get; init; }

    /// <summary><c>place NAME</c> or <c>jar NUMBER</c>; empty where that is said later.</summary>
    public string? Where { get; init; }
}
