using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Sensors;

/// <summary>Where offers are taken: what was heard on an unknown topic becomes a sensor of the household.</summary>
public sealed class TakeOffer(
    OfferBoard offers, ISourceRuleBook rules, ISensorBook sensors, GiveSensor desk, TimeProvider clock) : IDisposable
{
    /// <summary>One at a time: a wet finger taps twice, and must not make two sensors of one topic.</summary>
    private readonly SemaphoreSlim _turn = new(1, 1);

    /// <summary>What is offered at present, last heard first.</summary>
    public IReadOnlyList<Offer> All => offers.All();

    /// <summary>Takes an offer and gives its sensor to a place or a jar; what was wrong, or nothing.</summary>
    public async Task<(Sensor? Sensor, IReadOnlyList<Refusal> Refusals)> TakeAsync(OfferForm form, CancellationToken cancellationToken)
    {
        await _turn.WaitAsync(cancellationToken);
        try
        {
            return await TakeInTurnAsync(form, cancellationToken);
        }
        finally
        {
            _turn.Release();
        }
    }

    public void Dispose() => _turn.Dispose();

    private async Task<(Sensor? Sensor, IReadOnlyList<Refusal> Refusals)> TakeInTurnAsync(OfferForm form, CancellationToken cancellationToken)
    {
        string? pointer = string.IsNullOrEmpty(form.ValuePointer) ? null : form.ValuePointer;
        if (All.FirstOrDefault(each => each.Topic == form.Topic && each.ValuePointer == pointer) is not { } offer)
            return (null, [new Refusal("topic", string.IsNullOrEmpty(form.Topic) ? "nothing" : form.Topic,
                "a topic that is offered would be right: this one was taken, or is heard no more")]);
        MeasureUnit? unit = string.IsNullOrWhiteSpace(form.Unit) ? MeasureUnit.Find(offer.UnitSymbol) : MeasureUnit.Find(form.Unit.Trim());
        if (unit?.Quantity != offer.Quantity)
            return (null, [new Refusal("unit", form.Unit ?? "nothing",
                $"one of {string.Join(", ", MeasureUnit.All.Where(each => each.Quantity == offer.Quantity))} would be right")]);
        (SensorPlacement? placement, IReadOnlyList<Refusal> refusals) = await desk.ReadWhereAsync(form.Where, cancellationToken);
        if (placement is null)
            return (null, refusals);
        Sensor sensor = await MakeAsync(offer, unit, cancellationToken);
        await desk.GiveAsync(sensor, placement, cancellationToken);
        offers.Remove(offer);
        return (sensor, []);
    }

    private async Task<Sensor> MakeAsync(Offer offer, MeasureUnit unit, CancellationToken cancellationToken)
    {
        // A rule for a whole gateway reads it already, and asks for a sensor of the name that stands in the topic.
        if (offer.ReadByRule)
            return await sensors.FindAsync(offer.SuggestedSlug, cancellationToken) ?? await AddAsync(offer.SuggestedSlug, cancellationToken);
        // Somebody may have written the rule meanwhile.
        SourceRule? taken = (await rules.AllAsync(cancellationToken)).FirstOrDefault(rule =>
            rule.TopicFilter == offer.Topic && rule.ValuePointer == offer.ValuePointer && rule.SensorSlug is not null);
        if (taken is not null && await sensors.FindAsync(taken.SensorSlug!, cancellationToken) is { } known)
            return known;
        Sensor sensor = await AddAsync(await FreeSlugAsync(offer.SuggestedSlug, cancellationToken), cancellationToken);
        await rules.AddAsync(offer.ToRule(sensor.Slug, unit), cancellationToken);
        return sensor;
    }

    private Task<Sensor> AddAsync(string slug, CancellationToken cancellationToken)
    {
        Instant now = clock.GetUtcNow().ToInstant();
        var sensor = new Sensor { Id = Guid.CreateVersion7(now.ToDateTimeOffset()), Slug = slug, Name = slug.Replace('-', ' '), AddedAt = now };
        // Somebody else publishes for it: it needs no user of its own.
        return sensors.AddAsync(sensor, null, cancellationToken);
    }

    private async Task<string> FreeSlugAsync(string wanted, CancellationToken cancellationToken)
    {
        string slug = wanted;
        for (int i = 2; await sensors.FindAsync(slug, cancellationToken) is not null
            || await sensors.CredentialAsync(slug, cancellationToken) is not null; i++)
        {
            string ending = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"-{i}");
            slug = wanted[..Math.Min(wanted.Length, SensorSlug.LongestCharacters - ending.Length)] + ending;
        }
        return slug;
    }
}

/// <summary>Takes an offer: this topic is a sensor, and it measures this.</summary>
public sealed record OfferForm
{
    /// <summary>The topic that was offered.</summary>
    public string? Topic { get; init; }

    /// <summary>JSON Pointer to the value that was offered; empty for a bare number.</summary>
    public string? ValuePointer { get; init; }

    /// <summary>The unit, where the guess was wrong; empty takes the guess.</summary>
    public string? Unit { get; init; }

    /// <summary><c>place NAME</c>, <c>jar NUMBER</c> or <c>nowhere</c>.</summary>
    public string? Where { get; init; }
}
