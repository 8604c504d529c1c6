using System.Net;
using System.Net.Sockets;
using System.Text;

namespace FermentWatch.Notices.Tests.Mail;

/// <summary>A listener that says what it is told to at each step of SMTP and takes whatever comes; where it has nothing to say it hangs.</summary>
internal sealed class ScriptedPost : IAsyncDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly IReadOnlyDictionary<string, string?> _answers;
    private readonly CancellationTokenSource _stop = new();
    private readonly Task _running;

    /// <param name="answers">What it says by the first word of what came, and to <c>greeting</c> and <c>body</c>; null hangs. The rest is
    /// 250.</param>
    public ScriptedPost(IReadOnlyDictionary<string, string?> answers)
    {
        _answers = answers;
        _listener.Start();
        _running = RunAsync();
    }

    public int Port => ((IPEndPoint)_listener.LocalEndpoint).Port;

    public async ValueTask DisposeAsync()
    {
        // The listener last: whoever accepts at one that was stopped gets another exception than whoever is told to stop.
        await _stop.CancelAsync();
        await _running;
        _listener.Stop();
        _stop.Dispose();
    }

    private async Task RunAsync()
    {
        while (!_stop.IsCancellationRequested)
        {
            try
            {
                using TcpClient client = await _listener.AcceptTcpClientAsync(_stop.Token);
                await TalkAsync(client.GetStream());
            }
            catch (Exception over) when (over is OperationCanceledException or SocketException or IOException)
            {
                // The client hung up, or the test is over.
            }
        }
    }

    private async Task TalkAsync(NetworkStream stream)
    {
        using var reader = new StreamReader(stream, Encoding.ASCII);
        await SayAsync(stream, "greeting", "220 post.example.org");
        while (await reader.ReadLineAsync(_stop.Token) is { } line)
        {
            string word = line.Split(' ')[0].ToUpperInvariant();
            await SayAsync(stream, word, word == "DATA" ? "354 go on" : word == "QUIT" ? "221 bye" : "250 ok");
            if (word != "DATA" || _answers.ContainsKey(word))
                continue;
            while (await reader.ReadLineAsync(_stop.Token) is { } text && text != ".")
            {
            }
            await SayAsync(stream, "body", "250 taken");
        }
    }

    private async Task SayAsync(NetworkStream stream, string step, string usual)
    {
        if (_answers.TryGetValue(step, out string? told) && told is null)
            await Task.Delay(Timeout.InfiniteTimeSpan, TimeProvider.System, _stop.Token);
        await stream.WriteAsync(Encoding.ASCII.GetBytes((told ?? usual) + "\r\n"), _stop.Token);
    }
}
