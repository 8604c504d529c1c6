using System.Net;
using System.Net.Sockets;

namespace FermentWatch.Intake.Embedded.Listening;

/// <summary>An open connection, known to the broker or not yet.</summary>
internal sealed class OpenConnection(Socket socket, EndPoint remote, FrameLimit limit)
{
    public EndPoint Remote { get; } = remote;

    public Socket Socket { get; } = socket;

    public FrameLimit Limit { get; } = limit;
}
