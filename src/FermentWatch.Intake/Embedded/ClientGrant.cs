using FermentWatch.Intake.Topics;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Topics;

namespace FermentWatch.Intake.Embedded;

/// <summary>What a connected client may do, by the credential with which it came in.</summary>
/// <param name="Credential">The credential.</param>
/// <param name="Share">What its user has of the broker.</param>
internal sealed record ClientGrant(MqttCredential Credential, UserShare Share)
{
    private bool IsGateway => Credential.SensorId is null;

    /// <summary>Whether it may publish there: under its filter, and never on the topics by which we speak ourselves.</summary>
    public bool MayPublish(string topic) => !OwnTopic.IsOut(topic) && TopicFilter.Matches(topic, Credential.TopicFilter);

    /// <summary>Whether it may listen there: a sensor to its own topics, a gateway also to what we say of jars and rounds.</summary>
    public bool MaySubscribe(string filter) =>
        TopicFilter.Covers(Credential.TopicFilter, filter)
        || (IsGateway && OwnTopics.Said.Any(topics => TopicFilter.Covers(topics, filter)));
}
