using FermentWatch.Acts.Sensors;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Service.Demo.Household;

namespace FermentWatch.Service.Demo;

/// <summary>What the demo says of itself.</summary>
internal sealed class DemoNews(TextWriter output)
{
    /// <summary>Says where to look, how to sign in, and that nothing is real.</summary>
    public void SayOpen(Uri address, int brokerPort, MadeHousehold made)
    {
        MadeSensor toTry = made.Sensors.First(sensor => sensor.Invented.Slug == NumberNine.SensorToTry);
        string tryIt = SetUpLines.TryIt(new BrokerAddress("127.0.0.1", brokerPort), toTry.Invented.Slug, toTry.Password,
            SetUpLines.TopicOf(toTry.Invented.Slug));
        output.WriteLine($"""
            {NumberNine.Name} is open. Nothing in it is real: people, jars, sensors and everything measured are invented.

            open      {address}
            sign in   name {NumberNine.Owner}, password {made.OwnerPassword}
            send      {tryIt}
            end       Ctrl-C; everything is deleted then
            """);
        output.Flush();
    }

    /// <summary>Says that the weeks before the demo have come in and are reckoned with.</summary>
    public void SayHistory(int packs, int sensors)
    {
        output.WriteLine(FormattableString.Invariant($"history   {packs} packs of {sensors} sensors came in by MQTT; they report live now"));
        output.Flush();
    }
}
