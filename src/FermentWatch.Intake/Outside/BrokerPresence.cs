using System.Net.Sockets;

namespace FermentWatch.Intake.Outside;

/// <summary>
/// Looks whether anybody listens where the broker should be, by opening a TCP connection and nothing on it. That is no reconnect:
/// it costs neither side a session, and may be done often.
/// </summary>
internal static class BrokerPresence
{
    // An address whose machine is off does not answer at all; the system would go on asking for minutes.
    private static readonly TimeSpan _answersWithin = TimeSpan.FromSeconds(2);

    /// <summary>Why nobody is there, in one sentence; null where somebody is, or the link stops.</summary>
    public static async Task<string?> WhyAbsentAsync(OutsideBrokerOptions options, TimeProvider time, CancellationToken stopping)
    {
        using var timeout = new CancellationTokenSource(_answersWithin, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(timeout.Token, stopping);
        using var client = new TcpClient();
        try
        {
            await client.ConnectAsync(options.Host, options.Port, either.Token);
            return null;
        }
        catch (SocketException exception)
        {
            return $"{exception.Message.TrimEnd('.')}.";
        }
        catch (OperationCanceledException)
        {
            return stopping.IsCancellationRequested ? null : "Nobody answers there.";
        }
    }
}
