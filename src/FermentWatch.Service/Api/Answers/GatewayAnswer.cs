using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Service.Api.Answers;

/// <summary>A gateway, or buttons by the jars: something that publishes under a topic filter.</summary>
/// <param name="User">Its user name at our broker.</param>
/// <param name="Filter">The topic filter under which it may publish.</param>
/// <param name="MadeBy">Who of the household made it or keeps it; null where the command line did.</param>
public sealed record GatewayAnswer(string User, string Filter, string? MadeBy)
{
    public static GatewayAnswer Of(MqttCredential credential) => new(credential.User, credential.TopicFilter, credential.MadeBy);
}
