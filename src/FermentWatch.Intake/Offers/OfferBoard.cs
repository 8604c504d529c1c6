using FermentWatch.Intake.Door;
using NodaTime;

namespace FermentWatch.Intake.Offers;

/// <summary>What looks like a sensor and is none yet. In memory, bounded: whoever was heard longest ago makes place.</summary>
public sealed class OfferBoard
{
    /// <summary>Most topics on the board.</summary>
    public const int MostTopics = 300;

    private const int LongestTopic = 400;

    private readonly Lock _gate = new();
    private readonly Dictionary<string, (IReadOnlyList<Offer> Offers, Instant LastSeen, long Times)> _topics = new(StringComparer.Ordinal);

    /// <summary>All offers, last heard first.</summary>
    public IReadOnlyList<Offer> All()
    {
        lock (_gate)
            return [.. _topics.Values.OrderByDescending(topic => topic.LastSeen).SelectMany(topic => topic.Offers)];
    }

    /// <summary>Notes what an unknown topic carried; false if nothing of it looks like a sensor.</summary>
    public bool Note(string topic, ReadOnlyMemory<byte> payload, Instant at, string? deviceSlug = null)
    {
        if (topic.Length > LongestTopic)
            return false;
        IReadOnlyList<Likeness> found = LikenessFinder.Find(topic, payload);
        if (found.Count == 0)
            return false;
        string slug = deviceSlug ?? SensorSlug.From(topic) ?? "sensor";
        lock (_gate)
        {
            long times = _topics.TryGetValue(topic, out var before) ? before.Times + 1 : 1;
            if (times == 1 && _topics.Count >= MostTopics)
                _topics.Remove(_topics.MinBy(known => known.Value.LastSeen).Key);
            _topics[topic] = (
                [.. found.Select(l => new Offer(topic, l.Place, l.Quantity, l.Unit.Symbol, l.Value, at, times, slug))], at, times);
        }
        return true;
    }

    /// <summary>Takes a topic off the board, because it was taken or is not wanted.</summary>
    public void Remove(string topic)
    {
        lock (_gate)
            _topics.Remove(topic);
    }
}
