using System.CommandLine;
using FermentWatch.Service.CommandLine.Sensors;
using FermentWatch.Service.CommandLine.Sensors.Rules;

namespace FermentWatch.Service.CommandLine;

/// <summary><c>sensor</c>: who may report, and where each stands.</summary>
internal static class SensorVerb
{
    public static Command Create(CommandContext context) =>
        new("sensor", "Sensors: adds one and prints its credential once, lists them, says how other gear is read, takes one out of service. Works "
            + "while the service runs.")
    {
        AddVerb.Create(context),
        ListVerb.Create(context),
        RuleVerb.Create(context),
        RemoveVerb.Create(context),
    };
}
