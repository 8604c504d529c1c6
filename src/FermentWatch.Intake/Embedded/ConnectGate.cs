using FermentWatch.Intake.Credentials;
using FermentWatch.Intake.Topics;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Topics;
using MQTTnet.Protocol;

namespace FermentWatch.Intake.Embedded;

/// <summary>Decides who may connect, and knows who is connected.</summary>
internal sealed class ConnectGate(ISensorBook book, BrokerOptions options, TimeProvider time)
{
    private readonly Lock _lock = new();
    private readonly Dictionary<string, (ClientGrant Grant, int Connections)> _connected = new(StringComparer.Ordinal);

    // A share outlives the connections: who comes back at once has used up what it had used up.
    private readonly Dictionary<string, UserShare> _shares = new(StringComparer.Ordinal);

    /// <summary>Who is connected, by client id.</summary>
    public IReadOnlyCollection<KeyValuePair<string, ClientGrant>> Connected
    {
        get
        {
            lock (_lock)
                return [.. _connected.Select(client => KeyValuePair.Create(client.Key, client.Value.Grant))];
        }
    }

    public int Count
    {
        get
        {
            lock (_lock)
                return _connected.Count;
        }
    }

    /// <summary>Lets a client in, or says why not. Who is let in holds a place until <see cref="Leave"/>.</summary>
    /// <param name="clientId">Not empty, and no other user's.</param>
    /// <param name="user">User name, empty if it gave none.</param>
    /// <param name="password">Password, empty if it gave none.</param>
    public async Task<(ClientGrant? Grant, RefusalReason? Refusal)> EnterAsync(string clientId, string user, string password)
    {
        if (user.Length == 0 || password.Length == 0)
            return (null, RefusalReason.BadCredentials);
        MqttCredential? credential = await book.CredentialAsync(user, CancellationToken.None);
        if (credential is null || !SensorPassword.Verify(credential, password))
            return (null, RefusalReason.BadCredentials);

        lock (_lock)
        {
            // The same user with the same client id is the same device come back before we noticed that it was gone. Until its old
            // connection is, both are counted: which of the two ends first is not known.
            bool cameBack = _connected.TryGetValue(clientId, out var before);
            if (!cameBack && _connected.Count >= options.MaxConnections)
                return (null, RefusalReason.TooManyConnections);
            if (!cameBack && _connected.Values.Count(client => client.Grant.Credential.User == user) >= options.MaxConnectionsPerUser)
                return (null, RefusalReason.TooManyOfOneUser);
            var grant = new ClientGrant(credential, ShareOf(user));
            _connected[clientId] = (grant, before.Connections + 1);
            return (grant, null);
        }
    }

    /// <summary>Notes that a connection of a client has ended; its place is free when none is left.</summary>
    public void Leave(string clientId)
    {
        lock (_lock)
        {
            if (!_connected.TryGetValue(clientId, out var client))
                return;
            if (client.Connections > 1)
                _connected[clientId] = (client.Grant, client.Connections - 1);
            else
                _connected.Remove(clientId);
        }
    }

    private UserShare ShareOf(string user)
    {
        if (!_shares.TryGetValue(user, out UserShare? share))
            _shares[user] = share = new UserShare(options.MaxMessagesPerSecond, options.MaxWaitingBytesPerUser, time);
        return share;
    }

    /// <summary>What a client is told. MQTT 3.1.1 knows only these few answers; MQTT 5 knows them too.</summary>
    public static MqttConnectReasonCode Answer(RefusalReason refusal) => refusal switch
    {
        RefusalReason.NoClientId => MqttConnectReasonCode.ClientIdentifierNotValid,
        RefusalReason.BadCredentials => MqttConnectReasonCode.BadUserNameOrPassword,
        _ => MqttConnectReasonCode.ServerUnavailable,
    };

    /// <summary>Client ids of those connected whose credential is no longer what it was when they came in.</summary>
    public async Task<IReadOnlyList<string>> WithdrawnAsync(CancellationToken cancellationToken)
    {
        var withdrawn = new List<string>();
        foreach (var user in Connected.GroupBy(client => client.Value.Credential.User))
        {
            MqttCredential? now = await book.CredentialAsync(user.Key, cancellationToken);
            withdrawn.AddRange(user
                .Where(client => now is null || now.Id != client.Value.Credential.Id || now.PasswordHash != client.Value.Credential.PasswordHash)
                .Select(client => client.Key));
        }
        return withdrawn;
    }
}

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
