using System.CommandLine;
using FermentWatch.Acts.Sensors;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Topics;
using FermentWatch.Service.CommandLine.Records;
using NodaTime.Text;

namespace FermentWatch.Service.CommandLine.Sensors;

/// <summary><c>sensor list</c>: sensors in service and gateways.</summary>
internal static class ListVerb
{
    private static readonly string[] Columns = ["user", "name", "where", "topic", "last_heard"];

    public static Command Create(CommandContext context)
    {
        var verb = new Command("list", "Lists sensors in service, where each stands and when it was last heard of, and gateways.");
        var form = new OutputForm(verb);
        HouseholdRecords.SetAction(verb, context, async (call, provider, _, cancellationToken) =>
        {
            List<string[]> rows = [
                .. (await provider.GetRequiredService<SensorReader>().InServiceAsync(cancellationToken))
                    .OrderBy(view => view.Sensor.Slug, StringComparer.Ordinal).Select(Row),
                .. (await provider.GetRequiredService<AdmitGear>().GatewaysAsync(cancellationToken)).Select(gateway => Row(gateway.Credential)),
            ];
            Rows.Write(Columns, rows, form.Of(call), context);
            return ExitCode.Done;
        });
        return verb;
    }

    private static string[] Row(SensorView view) =>
    [
        view.Sensor.Slug, view.Sensor.Name, view.Jar is { } jar ? GiveSensor.WordOf(jar) : view.Place?.Name
            ?? "", $"{OwnTopics.Sensors}{view.Sensor.Slug}",
        view.LastHeard is { } at ? InstantPattern.General.Format(at) : "",
    ];

    private static string[] Row(MqttCredential gateway) => [gateway.User, "gateway", "", gateway.TopicFilter, ""];
}
