using System.Globalization;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Extensions;
using NodaTime.Text;

namespace FermentWatch.Acts.Histories;

/// <summary>A question about a history as it is typed into an address; each field may be left out but one of the first three.</summary>
/// <param name="Place">A place, by its name.</param>
/// <param name="Sensor">A sensor, by its name in topics.</param>
/// <param name="Jar">A jar, by its number.</param>
/// <param name="Quantity">What was measured, by its name in topics; temperature where left out.</param>
/// <param name="From">A date on the household's clock or an instant, ISO 8601; a week before the end, or a jar's packing, where left out.</param>
/// <param name="To">The same: a date is meant whole, an instant is left out itself; now where left out.</param>
/// <param name="Points">The most points wanted; 1,000 where left out.</param>
public sealed record HistoryForm(string? Place, string? Sensor, string? Jar, string? Quantity, string? From, string? To, string? Points);

/// <summary>What was measured, with what was meant by the question; or what was wrong with it.</summary>
/// <param name="Of">The place, sensor or jar in words.</param>
/// <param name="Span">What was asked.</param>
/// <param name="Measured">What was measured.</param>
/// <param name="Refusals">What was wrong; then nothing was read.</param>
public sealed record HistoryAnswer(string Of, HistorySpan Span, MeasuredHistory Measured, IReadOnlyList<Refusal> Refusals);

/// <summary>Answers a typed question about a history.</summary>
public sealed class AskHistory(
    HistoryReader reader, IPlaceBook places, ISensorBook sensors, IJarBook jars, IHouseholdBook households, TimeProvider clock)
{
    /// <summary>The most points of one answer: more than any screen is wide.</summary>
    public const int MostPoints = 5000;

    private const int OrdinaryPoints = 1000;
    private static readonly Duration OrdinarySpan = Duration.FromDays(7);

    /// <summary>What can be asked of by name: every place, and the sensors in service.</summary>
    public async Task<(IReadOnlyList<Place> Places, IReadOnlyList<Sensor> Sensors)> WhoseAsync(CancellationToken cancellationToken) =>
        (await places.AllAsync(cancellationToken),
            [.. (await sensors.AllAsync(cancellationToken)).Where(sensor => sensor.RemovedAt is null)
                .OrderBy(sensor => sensor.Name, StringComparer.OrdinalIgnoreCase)]);

    /// <summary>The answer.</summary>
    public async Task<HistoryAnswer> DoAsync(HistoryForm form, CancellationToken cancellationToken)
    {
        var fields = new FieldReader();
        Whose? whose = await WhoseAsync(form, fields, cancellationToken);
        Quantity quantity = QuantityOf(form.Quantity, fields);
        Instant until = await AtAsync("to", form.To, wholeDay: true, fields, cancellationToken) ?? clock.GetUtcNow().ToInstant();
        Instant from = await AtAsync("from", form.From, wholeDay: false, fields, cancellationToken) ?? whose?.Begins ?? Before(until, OrdinarySpan);
        int points = fields.ReadWhole("points", form.Points, OrdinaryPoints, HistoryQuestion.FewestPoints, MostPoints);
        if (from >= until && fields.Refusals.Count == 0)
            fields.Refuse("from", form.From, $"a date or an instant before {InstantPattern.General.Format(until)}, the end, would be right");
        var span = new HistorySpan(quantity, from, until, points);
        return fields.Refusals.Count > 0 || whose is null ? new HistoryAnswer("", span, new MeasuredHistory(null, []), fields.Refusals)
            : new HistoryAnswer(whose.Name, span, await whose.ReadAsync(span), []);
    }

    private async Task<Whose?> WhoseAsync(HistoryForm form, FieldReader fields, CancellationToken cancellationToken)
    {
        string?[] named = [form.Place, form.Sensor, form.Jar];
        if (named.Count(each => !string.IsNullOrWhiteSpace(each)) != 1)
        {
            fields.Refuse("place", named.All(string.IsNullOrWhiteSpace) ? null : "more than one of place, sensor and jar",
                "one of place (its name), sensor (its name in topics) or jar (its number) would be right");
            return null;
        }
        return !string.IsNullOrWhiteSpace(form.Place) ? await PlaceAsync(form.Place.Trim(), fields, cancellationToken)
            : !string.IsNullOrWhiteSpace(form.Sensor) ? await SensorAsync(form.Sensor.Trim(), fields, cancellationToken)
            : await JarAsync(form.Jar!.Trim(), fields, cancellationToken);
    }

    private async Task<Whose?> PlaceAsync(string name, FieldReader fields, CancellationToken cancellationToken)
    {
        IReadOnlyList<Place> all = await places.AllAsync(cancellationToken);
        if (all.FirstOrDefault(place => place.Name.Equals(name, StringComparison.OrdinalIgnoreCase)) is { } found)
            return new Whose(found.Name, null, span => reader.OfPlaceAsync(found.Id, span, cancellationToken));
        fields.Refuse("place", name, OneOf(all.Select(place => place.Name), "place"));
        return null;
    }

    private async Task<Whose?> SensorAsync(string slug, FieldReader fields, CancellationToken cancellationToken)
    {
        IReadOnlyList<Sensor> all = [];
        Sensor? found = await sensors.FindAsync(slug, cancellationToken);
        if (found is null)
            found = (all = await sensors.AllAsync(cancellationToken)).LastOrDefault(sensor => sensor.Slug == slug);
        if (found is not null)
            return new Whose(found.Name, null, span => reader.OfSensorAsync(found, span, cancellationToken));
        fields.Refuse("sensor", slug, OneOf(all.Where(sensor => sensor.RemovedAt is null).Select(sensor => sensor.Slug), "sensor"));
        return null;
    }

    private async Task<Whose?> JarAsync(string typed, FieldReader fields, CancellationToken cancellationToken)
    {
        if (int.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            && await jars.FindAsync(number, cancellationToken) is { } found)
            return new Whose($"jar {number}, {found.Name}", found.PackedAt, span => reader.OfJarAsync(found, span, cancellationToken));
        fields.Refuse("jar", typed, "the number of a jar that was put up would be right");
        return null;
    }

    private static Quantity QuantityOf(string? typed, FieldReader fields)
    {
        if (string.IsNullOrWhiteSpace(typed))
            return MeasuredQuantity.Ordinary.Key;
        if (MeasuredQuantity.Find(typed.Trim().ToLowerInvariant()) is { } found)
            return found;
        fields.Refuse("quantity", typed, $"{MeasuredQuantity.NamesInWords} would be right");
        return MeasuredQuantity.Ordinary.Key;
    }

    private async Task<Instant?> AtAsync(string field, string? typed, bool wholeDay, FieldReader fields, CancellationToken cancellationToken)
    {
        string text = (typed ?? "").Trim();
        if (text.Length == 0)
            return null;
        if (LocalDatePattern.Iso.Parse(text) is { Success: true, Value: var date } && date < LocalDate.MaxIsoValue && date.Year > 0)
            return (await households.ReadAsync(cancellationToken)).Zone.AtStartOfDay(wholeDay ? date.PlusDays(1) : date).ToInstant();
        // A plus sign in an address that was not encoded comes as a space.
        if (OffsetDateTimePattern.ExtendedIso.Parse(text.Replace(' ', '+')) is { Success: true, Value: var time } && time.Year > 0)
            return time.ToInstant();
        fields.Refuse(field, typed, "a date or an instant in ISO 8601 would be right, such as 2026-10-04 or 2026-10-04T08:00:00Z");
        return null;
    }

    private static Instant Before(Instant instant, Duration span) => instant - Instant.MinValue > span ? instant - span : Instant.MinValue;

    private static string OneOf(IEnumerable<string> names, string kind) =>
        names.Order(StringComparer.OrdinalIgnoreCase).Take(20).ToList() is { Count: > 0 } some
            ? $"one of {string.Join(", ", some)} would be right"
            : $"nothing would be right: this household has no {kind} yet";

    private sealed record Whose(string Name, Instant? Begins, Func<HistorySpan, Task<MeasuredHistory>> ReadAsync);
}
