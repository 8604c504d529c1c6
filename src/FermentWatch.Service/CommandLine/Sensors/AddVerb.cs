using System.CommandLine;
using FermentWatch.Acts.Sensors;
using FermentWatch.Kinetics;
using FermentWatch.Service.CommandLine.Records;
using FermentWatch.Service.Hosting;

namespace FermentWatch.Service.CommandLine.Sensors;

/// <summary><c>sensor add</c>: a credential for a sensor, or for a gateway that publishes under a topic filter.</summary>
internal static class AddVerb
{
    public static Command Create(CommandContext context)
    {
        var name = new Argument<string>(
            "NAME") { Description =
            "What the household calls it, such as 'cellar shelf'; letters, digits and hyphens of it become its name in topics." };
        var place = new Option<string>("--place") { HelpName = "PLACE", Description = "The place it stands in from now on." };
        var gateway = new Option<string>("--gateway") { HelpName = "FILTER",
            Description = "Makes a credential that may publish under a topic filter instead, such as 'zigbee/#'." };
        var form = new Option<bool>("--json") { Description = "JSON, for machines." };
        var verb = new Command("add", "Adds a sensor and prints broker address, user, password and topic, once.") { name, place, gateway, form };
        HouseholdRecords.SetAction(verb, context, mayMake: true, async (call, provider, settings, cancellationToken) =>
        {
            var desk = provider.GetRequiredService<AdmitGear>();
            var input = new AddInput(call.GetValue(name) ?? "", call.GetValue(place), call.GetValue(gateway));
            (AddedSensor? added, IReadOnlyList<Refusal> refusals) = await desk.AddAsync(input, cancellationToken);
            if (added is null)
                return context.Refuse(refusals);
            CredentialText.Write(added, BrokerAddresses.Of(settings.Mqtt), call.GetValue(form), context.Output);
            return ExitCode.Done;
        });
        return verb;
    }
}
