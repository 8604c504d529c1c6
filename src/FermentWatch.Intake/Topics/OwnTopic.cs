using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Topics;

namespace FermentWatch.Intake.Topics;

/// <summary>
/// A topic of our own shape: <c>fermentwatch/sensor/ID/QUANTITY</c>, <c>fermentwatch/sensor/ID/status</c>, or the bare
/// <c>fermentwatch/sensor/ID</c>.
/// </summary>
/// <param name="Slug">The sensor's name in the topic, not yet looked up.</param>
/// <param name="Kind">What belongs on the topic.</param>
/// <param name="Quantity">What a bare number on it measures; null unless <paramref name="Kind"/> is a number.</param>
public sealed record OwnTopic(string Slug, OwnTopicKind Kind, Quantity? Quantity)
{
    /// <summary>The filter that holds all topics of one sensor, and none of another's.</summary>
    public static string FilterFor(string slug) => $"{OwnTopics.Sensors}{slug}/#";

    /// <summary>Whether the topic lies under <see cref="OwnTopics.Sensors"/>.</summary>
    public static bool IsOwn(string topic) => topic.StartsWith(OwnTopics.Sensors, StringComparison.Ordinal);

    /// <summary>Whether it is one of the topics by which we speak ourselves, or may one day.</summary>
    public static bool IsOut(string topic) =>
        topic.StartsWith(OwnTopics.House, StringComparison.Ordinal) && !IsOwn(topic) && JarOfButton(topic) is null;

    /// <summary>The jar whose button the topic is, or null.</summary>
    public static string? JarOfButton(string topic) =>
        TopicFilter.Matches(topic, OwnTopics.JarButtons) ? topic.Split('/')[2] : null;

    /// <summary>Reads a topic under <see cref="OwnTopics.Sensors"/>; null where it lies elsewhere.</summary>
    public static OwnTopic? Parse(string topic)
    {
        if (!IsOwn(topic))
            return null;
        string[] levels = topic[OwnTopics.Sensors.Length..].Split('/');
        string slug = levels[0];
        return levels.Length switch
        {
            1 => new OwnTopic(slug, OwnTopicKind.Pack, null),
            2 when levels[1] == "status" => new OwnTopic(slug, OwnTopicKind.Status, null),
            2 when MeasuredQuantity.Find(levels[1]) is { } quantity => new OwnTopic(slug, OwnTopicKind.Number, quantity),
            _ => new OwnTopic(slug, OwnTopicKind.Unknown, null),
        };
    }
}

/// <summary>What belongs on a topic of our own shape.</summary>
public enum OwnTopicKind
{
    /// <summary>A bare number.</summary>
    Number = 1,

    /// <summary>A SenML pack.</summary>
    Pack = 2,

    /// <summary>The words online or offline.</summary>
    Status = 3,

    /// <summary>Nothing we know.</summary>
    Unknown = 4,
}
