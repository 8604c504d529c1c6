using NodaTime;

namespace FermentWatch.Kitchen.Sensors;

/// <summary>What looks like a sensor and is none yet. In memory, bounded: whoever was heard longest ago makes place.</summary>
public sealed class OfferBoard
{
    /// <summary>Most topics on the board.</summary>
    public const int MostTopics = 300;

    private const int LongestTopic = 400;

    /// <summary>Payloads in two units round each.</summary>
    private const double SameWithin = 0.6;

    private readonly Lock _gate = new();
    private readonly Dictionary<string, (IReadOnlyList<Offer> Offers, Instant LastSeen, long Times)> _topics = new(StringComparer.Ordinal);

    /// <summary>All offers, last heard first.</summary>
    public IReadOnlyList<Offer> All()
    {
        lock (_gate)
            return [.. _topics.Values.OrderByDescending(topic => topic.LastSeen).SelectMany(topic => topic.Offers)];
    }

    /// <summary>Notes what an unknown topic carried; false if nothing of it looks like a sensor.</summary>
    /// <param name="topic">The topic.</param>
    /// <param name="found">What of it looks like a sensor.</param>
    /// <param name="at">When it came.</param>
    /// <param name="deviceSlug">The name that stands in the topic, where a rule says so.</param>
    /// <param name="readByRule">Whether a rule found it.</param>
    public bool Note(string topic, IReadOnlyList<Likeness> found, Instant at, string? deviceSlug = null, bool readByRule = false)
    {
        if (topic.Length > LongestTopic || found.Count == 0)
            return false;
        string slug = deviceSlug ?? SensorSlug.From(topic) ?? "sensor";
        lock (_gate)
        {
            long times = _topics.TryGetValue(topic, out var before) ? before.Times + 1 : 1;
            if (times == 1 && _topics.Count >= MostTopics)
                _topics.Remove(_topics.MinBy(known => known.Value.LastSeen).Key);
            _topics[topic] = (
                [.. found.Select(l => new Offer(topic, l.Place, l.Quantity, l.Unit.Symbol, l.Value, at, times, slug, readByRule))], at, times);
        }
        return true;
    }

    /// <summary>
    /// Takes an offer off the board, because it was taken or is not wanted, and with it the same measurement in another unit; what
    /// else its topic carried stays.
    /// </summary>
    public void Remove(Offer offer)
    {
        lock (_gate)
        {
            if (!_topics.TryGetValue(offer.Topic, out var topic))
                return;
            Offer[] left = [.. topic.Offers.Where(each => each.ValuePointer != offer.ValuePointer && !IsSameMeasurement(each, offer))];
            if (left.Length == 0)
                _topics.Remove(offer.Topic);
            else
                _topics[offer.Topic] = (left, topic.LastSeen, topic.Times);
        }
    }

    private static bool IsSameMeasurement(Offer one, Offer other) =>
        one.Quantity == other.Quantity && one.UnitSymbol != other.UnitSymbol && Math.Abs(one.StoredValue - other.StoredValue) < SameWithin;
}
