using System.Net;
using System.Net.Sockets;
using System.Text;
using CsCheck;
using MQTTnet;

namespace FermentWatch.Intake.Tests.Embedded;

/// <summary>Spoilt MQTT streams from strangers and from a sensor that is let in: no fault, no hang, the others go on.</summary>
public sealed class BrokerFuzzTests
{
    private static readonly int _iterations = Environment.GetEnvironmentVariable("FERMENTWATCH_TESTS_LONG") == "1" ? 20_000 : 400;

    [Fact]
    public async Task Streams_Spoilt_LeaveTheBrokerRunning()
    {
        await using var broker = await BrokerUnderTest.StartAsync(set: options => options.ConnectTimeout = TimeSpan.FromSeconds(1));
        (_, string password) = await broker.Household.AddSensorAsync("fuzz");
        IMqttClient other = await broker.ConnectSensorAsync("cellar");
        byte[] connect = Connect("fuzz", password);
        byte[] publish = Publish("fermentwatch/sensor/fuzz", """[{"n":"fuzz","u":"Cel","t":1790841600,"v":17.5}]""");
        byte[] subscribe = [0x82, 0x1F, 0, 9, 0, 0x1A, .. Encoding.ASCII.GetBytes("fermentwatch/sensor/fuzz/#"), 1];
        Gen<(int At, byte Value)> spoil = Gen.Select(Gen.Int[0, connect.Length + publish.Length + subscribe.Length - 1], Gen.Byte);

        Gen.Select(spoil.Array[0, 4], Gen.Bool).Sample(
            (spoilt, letInFirst) =>
            {
                byte[] stream = [.. connect, .. publish, .. subscribe];
                foreach ((int at, byte value) in spoilt)
                    if (!letInFirst || at >= connect.Length)
                        stream[at] = value;
                Send(broker.Broker.Port!.Value, stream);
            },
            iter: _iterations,
            threads: 2);

        Assert.True((await BrokerUnderTest.PublishAsync(other, "fermentwatch/sensor/cellar/temperature", "17.5")).IsSuccess);
        Assert.Contains(broker.Stored, reading => reading.SensorKey == 1);
        await Eventually.TrueAsync(() => broker.Broker.ConnectedClients == 1, "those who are gone hold no place");
    }

    private static void Send(int port, byte[] stream)
    {
        using var socket = new Socket(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp) { ReceiveTimeout = 10_000 };
        socket.Connect(IPAddress.Loopback, port);
        try
        {
            socket.Send(stream);
            socket.Shutdown(SocketShutdown.Send);
            byte[] answer = new byte[256];
            while (socket.Receive(answer) > 0)
            {
            }
        }
        catch (SocketException exception) when (exception.SocketErrorCode is SocketError.ConnectionReset or SocketError.Shutdown)
        {
            // Cut while we were still speaking.
        }
    }

    private static byte[] Connect(string user, string password)
    {
        byte[] body =
        [
            0, 4, .. "MQTT"u8, 4, 0xC2, 0, 60,
            .. Text(user), .. Text(user), .. Text(password),
        ];
        return [0x10, (byte)body.Length, .. body];
    }

    private static byte[] Publish(string topic, string payload)
    {
        byte[] body = [.. Text(topic), 0, 7, .. Encoding.ASCII.GetBytes(payload)];
        return [0x32, (byte)body.Length, .. body];
    }

    private static byte[] Text(string text) => [0, (byte)text.Length, .. Encoding.ASCII.GetBytes(text)];
}
