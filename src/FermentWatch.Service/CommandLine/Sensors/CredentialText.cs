using System.Globalization;
using System.Text.Json;
using FermentWatch.Acts.Sensors;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Topics;
using FermentWatch.Web.Pages.Sensors;

namespace FermentWatch.Service.CommandLine.Sensors;

/// <summary>What is printed once when a credential was made.</summary>
internal static class CredentialText
{
    private const string Example = "21.5";

    public static void Write(AddedSensor added, BrokerAddress broker, bool asJson, TextWriter output)
    {
        string user = added.Issued.Credential.User;
        string topic = added.Sensor is { } sensor ? TopicOf(sensor.Slug) : added.Issued.Credential.TopicFilter;
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
            output.WriteLine($"try it    {TryIt(broker, user, added.Issued.Password, topic)}");
        output.WriteLine("The password is not kept and is not shown again.");
    }

    /// <summary>The topic on which a sensor's temperature is published.</summary>
    public static string TopicOf(string slug) => $"{OwnTopics.Sensors}{slug}/temperature";

    /// <summary>A line to paste that publishes one temperature.</summary>
    public static string TryIt(BrokerAddress broker, string user, string password, string topic) => string.Create(CultureInfo.InvariantCulture,
        $"mosquitto_pub -h {broker.Host} -p {broker.Port}{(broker.Tls ? " --cafile CERTIFICATE.pem" : "")} -i {user} -u {user} -P {password} -q 1 -t {topic} -m {Example}");
}
