using System.CommandLine;

namespace FermentWatch.Service.CommandLine.Sensors.Rules;

/// <summary><c>sensor rule</c>: how sensors that were not made for us are read.</summary>
internal static class RuleVerb
{
    public static Command Create(CommandContext context) =>
        new("rule", "Rules for gear that was not made for us: which topic, and where in its payload the value stands. In use within seconds.")
        {
            RuleAddVerb.Create(context),
            RuleListVerb.Create(context),
            RuleRemoveVerb.Create(context),
        };
}
