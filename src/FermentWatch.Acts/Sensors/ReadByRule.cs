using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Typed;
using NodaTime;

namespace FermentWatch.Acts.Sensors;

/// <summary>Where rules for sensors that were not made for us are handed in, by the API and the command line.</summary>
public sealed class ReadByRule(ISourceRuleBook rules, ISensorBook sensors, ISourceRuleCheck check, TimeProvider clock)
{
    /// <summary>Every rule, in the order in which they were added.</summary>
    public Task<IReadOnlyList<SourceRule>> AllAsync(CancellationToken cancellationToken) => rules.AllAsync(cancellationToken);

    /// <summary>Files a rule, or tells everything that is wrong with it.</summary>
    public async Task<RuleEntry> AddAsync(RuleForm form, CancellationToken cancellationToken)
    {
        RuleEntry entry = RuleEntry.Read(form, Guid.CreateVersion7(clock.GetUtcNow()), check);
        if (entry.Rule is not { } rule)
            return entry;
        if (rule.SensorSlug is { } slug && await sensors.FindAsync(slug, cancellationToken) is null)
            return new RuleEntry(null, [await UnknownAsync(slug, cancellationToken)]);
        await rules.AddAsync(rule, cancellationToken);
        return entry;
    }

    /// <summary>Removes a rule; what it stored stays. False if there is none of this id.</summary>
    public Task<bool> RemoveAsync(Guid id, CancellationToken cancellationToken) => rules.RemoveAsync(id, cancellationToken);

    private async Task<Refusal> UnknownAsync(string slug, CancellationToken cancellationToken)
    {
        string[] known = [.. (await sensors.AllAsync(cancellationToken)).Where(sensor => sensor.RemovedAt is null).Select(sensor => sensor.Slug)];
        string right = NearestName.Of(slug, known) is { } nearest ? $"did you mean {nearest}?"
            : known.Length > 0 ? $"one of {string.Join(", ", known)} would be right" : "add the sensor first: there is none in service";
        return new Refusal("sensor", slug, right);
    }
}

/// <summary>What somebody typed to say how a sensor that was not made for us is to be read, as typed.</summary>
public sealed record RuleForm
{
    /// <summary>MQTT topic filter; <c>{device}</c> stands for the level that names the sensor.</summary>
    public string? Topic { get; init; }

    /// <summary>The sensor it feeds, by its name in topics; empty where the topic names it.</summary>
    public string? Sensor { get; init; }

    /// <summary><c>number</c>, <c>json</c> or <c>senml</c>; empty is JSON where there is a pointer to the value, else a number.</summary>
    public string? Payload { get; init; }

    /// <summary><c>temperature</c>, <c>ph</c>, <c>millivolts</c> or <c>humidity</c>; empty is what the unit measures.</summary>
    public string? Quantity { get; init; }

    /// <summary>JSON Pointer to the value.</summary>
    public string? ValueAt { get; init; }

    /// <summary>The unit, such as <c>Cel</c> or <c>degF</c>.</summary>
    public string? Unit { get; init; }

    /// <summary>JSON Pointer to the unit.</summary>
    public string? UnitAt { get; init; }

    /// <summary><c>s</c>, <c>ms</c> or <c>iso8601</c>; empty where arrival is the time.</summary>
    public string? Time { get; init; }

    /// <summary>JSON Pointer to the time.</summary>
    public string? TimeAt { get; init; }

    /// <summary>What the names of records in a SenML pack begin with.</summary>
    public string? Record { get; init; }

    /// <summary>Added to every value, in the unit in which the quantity is stored; empty is 0.</summary>
    public string? Offset { get; init; }

    /// <summary>Smallest plausible value; a temperature may carry its unit, else it is in the unit in which the quantity is stored.</summary>
    public string? Low { get; init; }

    /// <summary>Largest plausible value.</summary>
    public string? High { get; init; }

    /// <summary>Longest silence, such as <c>6h</c> or <c>2d</c>; empty is judged by the sensor's own rhythm.</summary>
    public string? LongestSilence { get; init; }
}

/// <summary>A rule that was read: the rule, or everything that was wrong.</summary>
/// <param name="Rule">The rule; null if anything was wrong.</param>
/// <param name="Refusals">What was wrong.</param>
public sealed record RuleEntry(SourceRule? Rule, IReadOnlyList<Refusal> Refusals)
{
    private static readonly (string Word, SourceTime Time)[] Times =
        [("s", SourceTime.UnixSeconds), ("ms", SourceTime.UnixMilliseconds), ("iso8601", SourceTime.Iso8601)];

    /// <summary>Reads a form. Whether its sensor is in service is looked at elsewhere.</summary>
    /// <param name="form">What was typed.</param>
    /// <param name="id">The id of the rule.</param>
    /// <param name="check">Whether payloads can be read by it.</param>
    public static RuleEntry Read(RuleForm form, Guid id, ISourceRuleCheck check)
    {
        var reader = new FieldReader();
        string? unit = Typed(form.Unit);
        Quantity? quantity = QuantityOf(form, unit, reader);
        var rule = new SourceRule
        {
            Id = id, TopicFilter = Typed(form.Topic) ?? "", SensorSlug = Typed(form.Sensor)?.ToLowerInvariant(),
            Payload = reader.ReadChoice("payload", form.Payload, Typed(form.ValueAt) is null ? SourcePayload.Number : SourcePayload.Json),
            Quantity = quantity, ValuePointer = Typed(form.ValueAt), Unit = unit, UnitPointer = Typed(form.UnitAt),
            Time = TimeOf(form.Time, reader), TimePointer = Typed(form.TimeAt), RecordName = Typed(form.Record),
            Offset = NumberOf("offset", form.Offset, Amount.Number, reader) ?? 0,
            PlausibleLow = NumberOf("low", form.Low, KindOf(quantity), reader),
                PlausibleHigh = NumberOf("high", form.High, KindOf(quantity), reader),
            LongestSilence = NumberOf("longest silence", form.LongestSilence, Amount.Days, reader, bareUnit: null) is { } days
                ? Duration.FromDays(days) : null,
        };
        if (reader.Refusals.Count == 0)
            reader.Refusals.AddRange(check.Errors(rule).Select(error =>
                new Refusal("rule", rule.TopicFilter.Length == 0 ? "nothing" : rule.TopicFilter, error)));
        return new RuleEntry(reader.Refusals.Count == 0 ? rule : null, reader.Refusals);
    }

    private static Quantity? QuantityOf(RuleForm form, string? unit, FieldReader reader)
    {
        if (Typed(form.Quantity) is not { } name)
            return form.Payload?.Trim().Equals("senml", StringComparison.OrdinalIgnoreCase) == true ? null : MeasureUnit.Find(unit)?.Quantity;
        if (MeasuredQuantity.Find(name.ToLowerInvariant()) is { } quantity)
            return quantity;
        reader.Refuse("quantity", name, $"one of {MeasuredQuantity.NamesInWords} would be right");
        return null;
    }

    private static SourceTime TimeOf(string? typed, FieldReader reader)
    {
        if (Typed(typed) is not { } word)
            return SourceTime.Arrival;
        foreach ((string known, SourceTime time) in Times)
            if (known.Equals(word, StringComparison.OrdinalIgnoreCase))
                return time;
        reader.Refuse("time", word, $"one of {string.Join(", ", Times.Select(each => each.Word))} would be right");
        return SourceTime.Arrival;
    }

    private static double? NumberOf(string field, string? typed, Amount kind, FieldReader reader, string? bareUnit = "C")
    {
        if (Typed(typed) is not { } text)
            return null;
        if (kind.TryRead(text, kind == Amount.Number ? null : bareUnit, out double value))
            return value;
        reader.Refuse(field, text, $"a number would be right, such as {kind.Example}");
        return null;
    }

    private static Amount KindOf(Quantity? quantity) => quantity is { } known ? MeasuredQuantity.Of(known).Typed : Amount.Number;

    private static string? Typed(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
