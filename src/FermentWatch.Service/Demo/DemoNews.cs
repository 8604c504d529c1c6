using FermentWatch.Service.CommandLine.Sensors;
using FermentWatch.Service.Demo.Household;

namespace FermentWatch.Service.Demo;

/// <summary>What the demo says of itself.</summary>
internal sealed class DemoNews(TextWriter output)
{
    /// <summary>Says where to look, how to sign in, and that nothing is real.</summary>
    public void Say(Uri address, int brokerPort, MadeHousehold made, int packs)
    {
        MadeSensor toTry = made.Sensors.First(sensor => sensor.Invented.Slug == NumberNine.SensorToTry);
        output.WriteLine($"""
            {NumberNine.Name} is open. Nothing in it is real: people, jars, sensors and everything measured are invented.

            open      {address}
            sign in   name {NumberNine.Owner}, password {made.OwnerPassword}
            send      {CredentialText.TryIt(new BrokerAddress("127.0.0.1", brokerPort), toTry.Invented.Slug, toTry.Password, CredentialText.TopicOf(toTry.Invented.Slug))}
            history   {packs} packs of {made.Sensors.Count} sensors came in by MQTT; they report live now
            end       Ctrl-C; everything is deleted then
            """);
        output.Flush();
    }
}
