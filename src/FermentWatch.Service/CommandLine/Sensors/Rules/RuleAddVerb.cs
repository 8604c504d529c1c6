using System.CommandLine;
using FermentWatch.Acts.Sensors;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Service.CommandLine.Records;

namespace FermentWatch.Service.CommandLine.Sensors.Rules;

/// <summary><c>sensor rule add</c>.</summary>
internal static class RuleAddVerb
{
    public static Command Create(CommandContext context)
    {
        var topic = new Argument<string>(
            "TOPIC") { Description =
            "Topic filter, such as 'hub/kitchen/state'; {device} stands for the level that names the sensor, as in 'hub/{device}/state'." };
        var sensor = Option("--sensor", "USER", "The sensor it feeds, as 'sensor list' shows it; without it the topic must name it at {device}.");
        var payload = Option("--payload", "KIND", "number, json or senml. Default: json with --value-at, else number.");
        var valueAt = Option("--value-at", "POINTER", "JSON Pointer to the value, such as /temperature or /sensors/0/t.");
        var quantity = Option("--quantity", "QUANTITY", $"{MeasuredQuantity.NamesInWords}. Default: what the unit measures.");
        var unit = Option("--unit", "UNIT", $"{MeasureUnit.OneOf([.. MeasureUnit.All.Select(each => each.Symbol)])}.");
        var unitAt = Option("--unit-at", "POINTER", "JSON Pointer to the unit, where the document carries it.");
        var time = Option("--time", "KIND", "How the document says when: s or ms since 1970, or iso8601. Default: the time of arrival.");
        var timeAt = Option("--time-at", "POINTER", "JSON Pointer to the time.");
        var record = Option("--record", "NAME", "Of a SenML pack of several devices: only records whose name begins with this.");
        var offset = Option("--offset", "NUMBER", "Added to every value, such as -0.4.");
        var low = Option("--low", "VALUE", "Smallest plausible value, such as 2C; what is below is kept and does not count.");
        var high = Option("--high", "VALUE", "Largest plausible value.");
        var silence = Option("--longest-silence", "TIME", "How long it may be silent, such as 6h or 2d. Default: by its own rhythm.");
        var verb = new Command("add", "Adds a rule.") { topic, sensor, payload, valueAt, quantity, unit, unitAt, time, timeAt, record, offset, low,
            high, silence };
        HouseholdRecords.SetAction(verb, context, mayMake: true, async (call, provider, _, cancellationToken) =>
        {
            var form = new RuleForm
            {
                Topic = call.GetValue(topic), Sensor = call.GetValue(sensor), Payload = call.GetValue(payload), ValueAt = call.GetValue(valueAt),
                Quantity = call.GetValue(quantity), Unit = call.GetValue(unit), UnitAt = call.GetValue(unitAt), Time = call.GetValue(time),
                TimeAt = call.GetValue(timeAt), Record = call.GetValue(record), Offset = call.GetValue(offset), Low = call.GetValue(low),
                High = call.GetValue(high), LongestSilence = call.GetValue(silence),
            };
            RuleEntry entry = await provider.GetRequiredService<ReadByRule>().AddAsync(form, cancellationToken);
            if (entry.Rule is not { } rule)
                return context.Refuse(entry.Refusals);
            string feeds = rule.SensorSlug is { } slug ? $"It feeds {slug}."
                : "It feeds sensors of the names that stand in the topic; unknown ones are offered on the sensors page.";
            await context.Output.WriteLineAsync($"{rule.TopicFilter} is read as {RuleWords.Payload(rule)}. {feeds}");
            return ExitCode.Done;
        });
        return verb;
    }

    private static Option<string?> Option(string name, string value, string description) =>
        new(name) { HelpName = value, Description = description };
}
