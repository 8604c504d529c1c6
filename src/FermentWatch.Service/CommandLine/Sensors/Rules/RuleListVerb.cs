using System.CommandLine;
using System.Globalization;
using FermentWatch.Acts.Sensors;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Service.CommandLine.Records;

namespace FermentWatch.Service.CommandLine.Sensors.Rules;

/// <summary><c>sensor rule list</c>: the rules in the order in which they were added, each with its number.</summary>
internal static class RuleListVerb
{
    private static readonly string[] Columns = ["number", "topic", "sensor", "reads", "offset", "range", "longest_silence"];

    public static Command Create(CommandContext context)
    {
        var verb = new Command("list", "Lists the rules.");
        var form = new OutputForm(verb);
        HouseholdRecords.SetAction(verb, context, async (call, provider, _, cancellationToken) =>
        {
            IReadOnlyList<SourceRule> rules = await provider.GetRequiredService<ReadByRule>().AllAsync(cancellationToken);
            Rows.Write(Columns, [.. rules.Select((rule, index) => Row(rule, index + 1))], form.Of(call), context);
            return ExitCode.Done;
        });
        return verb;
    }

    private static string[] Row(SourceRule rule, int number) =>
    [
        number.ToString(CultureInfo.InvariantCulture), rule.TopicFilter, rule.SensorSlug ?? "{device}", RuleWords.Payload(rule),
        rule.Offset == 0 ? "" : rule.Offset.ToString(CultureInfo.InvariantCulture), RuleWords.Range(rule),
        rule.LongestSilence is { } silence ? silence.ToTimeSpan().ToString("c", CultureInfo.InvariantCulture) : "",
    ];
}
