using FermentWatch.Intake.Sources;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Topics;
using FermentWatch.Kitchen.Typed;
using NodaTime;

namespace FermentWatch.Acts.Sensors;

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
    public static RuleEntry Read(RuleForm form, Guid id)
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
            PlausibleLow = NumberOf("low", form.Low, KindOf(quantity), reader), PlausibleHigh = NumberOf("high", form.High, KindOf(quantity), reader),
            LongestSilence = NumberOf("longest silence", form.LongestSilence, Amount.Days, reader, bareUnit: null) is { } days ? Duration.FromDays(days) : null,
        };
        if (reader.Refusals.Count == 0)
            reader.Refusals.AddRange(SourceReader.Errors(rule).Select(error => new Refusal("rule", rule.TopicFilter.Length == 0 ? "nothing" : rule.TopicFilter, error)));
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
