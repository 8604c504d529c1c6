using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Runtime.CompilerServices;

namespace FermentWatch.Browser.Tests;

/// <summary>What lies between a phone and the kitchen: it can be cut, mended, and cut in the middle of an answer.</summary>
internal sealed class Wire : IDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly Lock _gate = new();
    private readonly List<TcpClient> _open = [];
    private readonly int _kitchen;
    private bool _isCut, _swallows;

    public Wire(RunningKitchen kitchen)
    {
        _kitchen = new Uri(kitchen.Address).Port;
        _listener.Start();
        Address = $"http://127.0.0.1:{((IPEndPoint)_listener.LocalEndpoint).Port.ToString(CultureInfo.InvariantCulture)}";
        _ = AcceptAsync();
    }

    /// <summary>Where the phone finds the kitchen, without a slash at its end.</summary>
    public string Address { get; }

    public void Cut()
    {
        lock (_gate)
        {
            _isCut = true;
            foreach (TcpClient each in _open)
                each.Dispose();
            _open.Clear();
        }
    }

    public void Mend()
    {
        lock (_gate)
            (_isCut, _swallows) = (false, false);
    }

    /// <summary>The form that is sent next still reaches the kitchen; its answer does not come back, and nothing after it. What pages ask
    /// for besides, such as the salt while somebody types, is answered until then.</summary>
    public void CutInTheAnswerToTheNextForm()
    {
        lock (_gate)
            _swallows = true;
    }

    public void Dispose()
    {
        Cut();
        _listener.Dispose();
    }

    private async Task AcceptAsync()
    {
        try
        {
            while (true)
                _ = CarryAsync(await _listener.AcceptTcpClientAsync());
        }
        catch (Exception ended) when (ended is SocketException or ObjectDisposedException)
        {
            // The test is over.
        }
    }

    private async Task CarryAsync(TcpClient phone)
    {
        using (phone)
        using (var kitchen = new TcpClient())
        {
            lock (_gate)
            {
                if (_isCut)
                    return;
                _open.AddRange([phone, kitchen]);
            }
            try
            {
                await kitchen.ConnectAsync(IPAddress.Loopback, _kitchen);
                var carriesForm = new StrongBox<bool>();
                await Task.WhenAny(CopyAsync(phone, kitchen, carriesForm, isAnswer: false), CopyAsync(kitchen, phone, carriesForm, isAnswer: true));
            }
            catch (Exception ended) when (ended is IOException or SocketException or ObjectDisposedException)
            {
                // Cut.
            }
        }
    }

    private async Task CopyAsync(TcpClient from, TcpClient to, StrongBox<bool> carriesForm, bool isAnswer)
    {
        byte[] buffer = new byte[16 * 1024];
        try
        {
            while (await from.GetStream().ReadAsync(buffer) is > 0 and int read)
            {
                if (!isAnswer)
                    carriesForm.Value = IsForm(buffer.AsSpan(0, read)) ?? carriesForm.Value;
                else if (_swallows && carriesForm.Value)
                {
                    Cut();
                    return;
                }
                await to.GetStream().WriteAsync(buffer.AsMemory(0, read));
            }
        }
        catch (Exception ended) when (ended is IOException or SocketException or ObjectDisposedException or InvalidOperationException)
        {
            // Cut.
        }
    }

    /// <summary>Whether what a browser sends begins a form, or begins something else; null in the middle of either.</summary>
    private static bool? IsForm(ReadOnlySpan<byte> sent) => sent.StartsWith("POST "u8) ? true : sent.StartsWith("GET "u8) ? false : null;
}
