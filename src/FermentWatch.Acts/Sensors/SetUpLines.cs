using System.Globalization;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Topics;

namespace FermentWatch.Acts.Sensors;

/// <summary>What gear must be told to reach our broker, as text to paste or to scan.</summary>
public static class SetUpLines
{
    private const string Example = "21.5";

    /// <summary>The topic on which a sensor's temperature is published.</summary>
    public static string TopicOf(string slug) => $"{OwnTopics.Sensors}{slug}/temperature";

    /// <summary>A line to paste that publishes one temperature.</summary>
    public static string TryIt(BrokerAddress broker, string user, string password, string topic) => string.Create(CultureInfo.InvariantCulture,
        $"mosquitto_pub -h {broker.Host} -p {broker.Port}{(broker.Tls ? " --cafile CERTIFICATE.pem" : "")} -i {user} -u {user} -P {password} -q 1 "
        + $"-t {topic} -m {Example}");

    /// <summary>All of it by lines, for a phone that scans a code and copies from it into the page of the gear.</summary>
    public static string ForThePhone(BrokerAddress broker, AddedSensor added) => string.Create(CultureInfo.InvariantCulture,
        $"{added.Sensor!.Name}\nBroker: {broker.Host}\nPort: {broker.Port}{(broker.Tls ? ", TLS" : "")}\nUser: "
        + $"{added.Issued.Credential.User}\nPassword: {added.Issued.Password}\nTopic: {TopicOf(added.Sensor.Slug)}");
}
