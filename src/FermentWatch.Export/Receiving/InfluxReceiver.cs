using System.Globalization;
using System.Net;
using System.Net.Sockets;
using InfluxDB.Client;
using InfluxDB.Client.Core.Exceptions;
using InfluxDB.Client.Writes;

namespace FermentWatch.Export.Receiving;

/// <summary>Writes by the InfluxDB v2 write call, over one connection that is kept open and numbered.</summary>
public sealed class InfluxReceiver : IPointReceiver, IDisposable
{
    private readonly InfluxOptions _options;
    private readonly HttpClient _http;
    private readonly InfluxDBClient _client;
    private readonly WriteApiAsync _write;
    private long _connections;

    /// <param name="options">Settings without errors, with an address.</param>
    public InfluxReceiver(InfluxOptions options)
    {
        _options = options;
        // One connection at a time, never given up by us: then the number of connections opened so far names the one in use.
        _http = new HttpClient(new SocketsHttpHandler
        {
            MaxConnectionsPerServer = 1,
            PooledConnectionIdleTimeout = Timeout.InfiniteTimeSpan,
            PooledConnectionLifetime = Timeout.InfiniteTimeSpan,
            AllowAutoRedirect = false,
            ConnectCallback = ConnectAsync,
        })
        { Timeout = options.Timeout };
        _client = new InfluxDBClient(new InfluxDBClientOptions(options.Address)
        {
            Token = options.Token, Org = options.Org, Bucket = options.Bucket, HttpClient = _http, Timeout = options.Timeout,
        });
        _write = _client.GetWriteApiAsync();
    }

    /// <inheritdoc/>
    public async Task<WriteOutcome> WriteAsync(IReadOnlyList<PointData> points, CancellationToken cancellationToken)
    {
        try
        {
            var answers = await _write.WritePointsAsyncWithIRestResponse(points, cancellationToken: cancellationToken);
            // Anything that serves pages answers 200: only "no content" is the answer of one that has written.
            return Array.Find(answers, answer => answer.StatusCode != HttpStatusCode.NoContent) is { } other
                ? WriteOutcome.TryAgain(string.Create(
                    CultureInfo.InvariantCulture, $"{_options.Address} answered {(int)other.StatusCode}, where one that writes points answers 204"))
                : WriteOutcome.Taken(Interlocked.Read(ref _connections));
        }
        catch (HttpException) when (cancellationToken.IsCancellationRequested)
        {
            throw new OperationCanceledException(cancellationToken);
        }
        catch (HttpException answer) when (answer.Status is >= 300 and < 600)
        {
            return Outcome(answer);
        }
        catch (HttpException trouble)
        {
            return WriteOutcome.TryAgain($"{_options.Address} could not be reached: {Reason(trouble)}");
        }
    }

    public void Dispose()
    {
        _client.Dispose();
        _http.Dispose();
    }

    private async ValueTask<Stream> ConnectAsync(SocketsHttpConnectionContext context, CancellationToken cancellationToken)
    {
        Interlocked.Increment(ref _connections);
        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            await socket.ConnectAsync(context.DnsEndPoint, cancellationToken);
            return new NetworkStream(socket, ownsSocket: true);
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }

    private WriteOutcome Outcome(HttpException answer)
    {
        string said = string.Create(CultureInfo.InvariantCulture, $"{_options.Address} answered {answer.Status} {OneLine(answer.Message)}").Trim();
        TimeSpan? notBefore = answer.RetryAfter is > 0 and < 86_400 and var seconds ? TimeSpan.FromSeconds(seconds) : null;
        // 400 malformed or of another type than before, 413 too many at once, 422 outside what the bucket keeps: about the points.
        // Everything else is about the receiver, or about who may write there.
        return answer.Status is 400 or 413 or 422 ? WriteOutcome.Refused(said) : WriteOutcome.TryAgain(said, notBefore);
    }

    private string Reason(HttpException trouble) => trouble.InnerException is OperationCanceledException
        ? string.Create(CultureInfo.InvariantCulture, $"no answer within {_options.Timeout.TotalSeconds:0.#} seconds")
        : OneLine(trouble.Message);

    /// <summary>What others say is cut and kept to one line: it goes into our log.</summary>
    private static string OneLine(string text)
    {
        const int longest = 300;
        string line = string.Concat(text.Select(letter => char.IsControl(letter) ? ' ' : letter)).Trim();
        return line.Length <= longest ? line : line[..longest];
    }
}
