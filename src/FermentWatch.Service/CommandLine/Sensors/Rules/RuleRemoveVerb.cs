using System.CommandLine;
using System.Globalization;
using FermentWatch.Acts.Sensors;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Service.CommandLine.Records;

namespace FermentWatch.Service.CommandLine.Sensors.Rules;

/// <summary><c>sensor rule remove</c>.</summary>
internal static class RuleRemoveVerb
{
    public static Command Create(CommandContext context)
    {
        var number = new Argument<string>("NUMBER") { Description = "Its number, as 'sensor rule list' shows it." };
        var topic = new Option<string?>("--topic") { HelpName = "TOPIC",
            Description = "Its topic filter, to be sure: numbers move up when an earlier rule is removed." };
        var verb = new Command("remove", "Removes a rule; what it stored stays.") { number, topic };
        HouseholdRecords.SetAction(verb, context, async (call, provider, _, cancellationToken) =>
        {
            var desk = provider.GetRequiredService<ReadByRule>();
            IReadOnlyList<SourceRule> rules = await desk.AllAsync(cancellationToken);
            string typed = (call.GetValue(number) ?? "").Trim();
            SourceRule? rule = int.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out int place) && place >= 1
                && place <= rules.Count
                ? rules[place - 1]
                : null;
            if (rule is null)
                return context.Refuse([new Refusal("number", typed,
                    rules.Count == 0 ? "there is no rule" : $"a number from 1 to {rules.Count} would be right")]);
            if (call.GetValue(topic) is { } expected && expected != rule.TopicFilter)
                return context.Refuse([new Refusal("topic", expected, $"rule {place} is for {rule.TopicFilter}")]);
            await desk.RemoveAsync(rule.Id, cancellationToken);
            await context.Output.WriteLineAsync($"The rule for {rule.TopicFilter} is removed; what it stored stays.");
            return ExitCode.Done;
        });
        return verb;
    }
}
