using System.CommandLine;
using FermentWatch.Acts.Sensors;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Typed;
using FermentWatch.Service.CommandLine.Records;

namespace FermentWatch.Service.CommandLine.Sensors;

/// <summary><c>sensor remove</c>: takes a sensor or gateway out of service.</summary>
internal static class RemoveVerb
{
    public static Command Create(CommandContext context)
    {
        var name = new Argument<string>("USER") { Description = "Its name in topics, as 'sensor list' shows it." };
        var verb = new Command("remove", "Takes a sensor or gateway out of service and deletes its credential; its readings stay.") { name };
        HouseholdRecords.SetAction(verb, context, async (call, provider, _, cancellationToken) =>
        {
            var sensors = provider.GetRequiredService<ISensorBook>();
            var gear = provider.GetRequiredService<AdmitGear>();
            string typed = (call.GetValue(name) ?? "").Trim();
            if (await gear.RemoveGatewayAsync(typed, cancellationToken))
            {
                await context.Output.WriteLineAsync($"{typed} may publish no more; what it published stays.");
                return ExitCode.Done;
            }
            if (await sensors.FindAsync(typed, cancellationToken) is not { } sensor)
                return context.Refuse([Unknown(typed, await KnownAsync(sensors, cancellationToken))]);
            await gear.RemoveAsync(sensor, cancellationToken);
            await context.Output.WriteLineAsync($"{sensor.Slug} is out of service; its readings stay.");
            return ExitCode.Done;
        });
        return verb;
    }

    private static async Task<string[]> KnownAsync(ISensorBook sensors, CancellationToken cancellationToken) =>
    [
        .. (await sensors.AllAsync(cancellationToken)).Where(sensor => sensor.RemovedAt is null).Select(sensor => sensor.Slug),
        .. (await sensors.GatewaysAsync(cancellationToken)).Select(gateway => gateway.User),
    ];

    private static Refusal Unknown(string typed, string[] known)
    {
        string right = NearestName.Of(typed, known) is { } nearest ? $"did you mean {nearest}?"
            : known.Length > 0 ? $"one of {string.Join(", ", known)} would be right" : "there is no sensor in service";
        return new Refusal("user", typed, right);
    }
}
