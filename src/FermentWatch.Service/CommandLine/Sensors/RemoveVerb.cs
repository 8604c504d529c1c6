using System.CommandLine;
using FermentWatch.Acts.Sensors;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Sensors;
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
            string typed = (call.GetValue(name) ?? "").Trim();
            (Sensor? sensor, Refusal? refusal) = await provider.GetRequiredService<AdmitGear>().RemoveAsync(typed, cancellationToken);
            if (refusal is not null)
                return context.Refuse([refusal]);
            await context.Output.WriteLineAsync(sensor is null ? $"{typed} may publish no more; what it published stays."
                : $"{sensor.Slug} is out of service; its readings stay.");
            return ExitCode.Done;
        });
        return verb;
    }
}
