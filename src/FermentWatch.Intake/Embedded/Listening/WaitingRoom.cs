using System.Net;
using System.Net.Sockets;

namespace FermentWatch.Intake.Embedded.Listening;

/// <summary>
/// Connections that have not yet said who they are. There are only so many places; when all are taken the one that waited longest
/// must go, so that half-open connections, however many, cannot keep a sensor out that says at once who it is.
/// </summary>
/// <typeparam name="T">A connection.</typeparam>
public sealed class WaitingRoom<T>(int places)
    where T : class
{
    private readonly Lock _gate = new();
    private readonly LinkedList<T> _waiting = new();
    private readonly Dictionary<T, LinkedListNode<T>> _nodes = new(ReferenceEqualityComparer.Instance);

    /// <summary>How many wait.</summary>
    public int Count
    {
        get
        {
            lock (_gate)
                return _waiting.Count;
        }
    }

    /// <summary>Takes a newcomer in; returns who has to go for it, or null.</summary>
    public T? Enter(T newcomer)
    {
        lock (_gate)
        {
            T? oldest = null;
            if (_waiting.Count >= places)
            {
                oldest = _waiting.First!.Value;
                Remove(oldest);
            }
            _nodes[newcomer] = _waiting.AddLast(newcomer);
            return oldest;
        }
    }

    /// <summary>Ends the waiting of a connection, because it was let in or is gone; false if it did not wait any more.</summary>
    public bool Leave(T connection)
    {
        lock (_gate)
            return Remove(connection);
    }

    private bool Remove(T connection)
    {
        if (!_nodes.Remove(connection, out LinkedListNode<T>? node))
            return false;
        _waiting.Remove(node);
        return true;
    }
}

/// <summary>Where to listen, and with which certificate; without one the connection is plain.</summary>
internal sealed record ListenAt(IPEndPoint EndPoint, ServerCertificate? Certificate);

/// <summary>An open connection, known to the broker or not yet.</summary>
internal sealed class OpenConnection(Socket socket, EndPoint remote, FrameLimit limit)
{
    public EndPoint Remote { get; } = remote;

    public Socket Socket { get; } = socket;

    public FrameLimit Limit { get; } = limit;
}
