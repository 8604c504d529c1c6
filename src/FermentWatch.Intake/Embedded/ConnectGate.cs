using System.Collections.Concurrent;
using FermentWatch.Intake.Credentials;
using FermentWatch.Kitchen.Sensors;
using MQTTnet.Protocol;

namespace FermentWatch.Intake.Embedded;

/// <summary>Decides who may connect, and knows who is connected.</summary>
internal sealed class ConnectGate(ISensorBook book, int maxConnections)
{
    private readonly ConcurrentDictionary<string, ClientGrant> _connected = new(StringComparer.Ordinal);

    /// <summary>Who is connected, by client id.</summary>
    public IReadOnlyCollection<KeyValuePair<string, ClientGrant>> Connected => _connected.ToArray();

    public int Count => _connected.Count;

    /// <summary>Lets a client in, or says why not. Who is let in holds a place until <see cref="Leave"/>.</summary>
    /// <param name="clientId">Not empty.</param>
    /// <param name="user">User name, empty if it gave none.</param>
    /// <param name="password">Password, empty if it gave none.</param>
    public async Task<(ClientGrant? Grant, RefusalReason? Refusal)> EnterAsync(string clientId, string user, string password)
    {
        if (user.Length == 0 || password.Length == 0)
            return (null, RefusalReason.BadCredentials);
        MqttCredential? credential = await book.CredentialAsync(user, CancellationToken.None);
        if (credential is null || !SensorPassword.Verify(credential, password))
            return (null, RefusalReason.BadCredentials);

        var grant = new ClientGrant(credential);
        // The same user with the same client id is the same device come back before we noticed that it was gone.
        if (_connected.TryGetValue(clientId, out ClientGrant? other))
        {
            if (other.Credential.User != user)
                return (null, RefusalReason.ClientIdTaken);
            _connected[clientId] = grant;
            return (grant, null);
        }
        if (_connected.Count >= maxConnections)
            return (null, RefusalReason.TooManyConnections);
        return _connected.TryAdd(clientId, grant) ? (grant, null) : (null, RefusalReason.ClientIdTaken);
    }

    /// <summary>Gives the place of a client back.</summary>
    public void Leave(string clientId) => _connected.TryRemove(clientId, out _);

    /// <summary>What a client is told. MQTT 3.1.1 knows only these few answers; MQTT 5 knows them too.</summary>
    public static MqttConnectReasonCode Answer(RefusalReason refusal) => refusal switch
    {
        RefusalReason.NoClientId or RefusalReason.ClientIdTaken => MqttConnectReasonCode.ClientIdentifierNotValid,
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
