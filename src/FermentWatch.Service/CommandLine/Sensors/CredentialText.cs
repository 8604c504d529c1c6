using System.Globalization;
using System.Text.Json;
using FermentWatch.Acts.Sensors;
using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Service.CommandLine.Sensors;

/// <summary>What is printed once when a credential was made.</summary>
internal static class CredentialText
{
    public static void Write(AddedSensor added, BrokerAddress broker, bool asJson, TextWriter output)
    {
        string user = added.Issued.Credential.User;
        string topic = added.Sensor is { } sensor ? SetUpLines.TopicOf(sensor.Slug) : added.Issued.Credential.TopicFilter;
        if (asJson)
        {
            output.WriteLine(JsonSerializer.Serialize(new { host = broker.Host, port = broker.Port, tls = broker.Tls, user,
                password = added.Issued.Password, topic }));
            return;
        }
        output.WriteLine($"broker    {broker.Host} port {broker.Port.ToString(CultureInfo.InvariantCulture)}{(broker.Tls ? ", TLS" : "")}");
        output.WriteLine($"user      {user}");
        output.WriteLine($"password  {added.Issued.Password}");
        output.WriteLine($"topic     {topic}");
        if (added.Sensor is not null)
            output.WriteLine($"try it    {SetUpLines.TryIt(broker, user, added.Issued.Password, topic)}");
        output.WriteLine("The password is not kept and is not shown again.");
    }
}
