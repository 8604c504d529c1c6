using System.CommandLine;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Topics;
using FermentWatch.Service.CommandLine.Records;
using NodaTime;
using NodaTime.Extensions;
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
            List<string[]> rows = await RowsAsync(provider, context.Clock.GetUtcNow().ToInstant(), cancellationToken);
            Rows.Write(Columns, rows, form.Of(call), context);
            return ExitCode.Done;
        });
        return verb;
    }

    private static async Task<List<string[]>> RowsAsync(IServiceProvider provider, Instant now, CancellationToken cancellationToken)
    {
        var sensors = provider.GetRequiredService<ISensorBook>();
        var log = provider.GetRequiredService<IReadingLog>();
        var places = (await provider.GetRequiredService<IPlaceBook>().AllAsync(cancellationToken)).ToDictionary(place => place.Id, place =>
            place.Name);
        var jars = (await provider.GetRequiredService<IJarBook>().AllAsync(cancellationToken)).ToDictionary(jar => jar.Id, jar => jar.Number);
        var rows = new List<string[]>();
        foreach (Sensor sensor in (await sensors.AllAsync(cancellationToken)).Where(sensor => sensor.RemovedAt is null).OrderBy(sensor =>
            sensor.Slug, StringComparer.Ordinal))
        {
            Instant? heard = await log.LastHeardAsync(sensor.Key, cancellationToken);
            string where = sensor.PlacementAt(now) switch
            {
                { JarId: { } jar } => FormattableString.Invariant($"jar {jars[jar]}"),
                { PlaceId: { } place } => places[place],
                _ => "",
            };
            rows.Add([sensor.Slug, sensor.Name, where, $"{OwnTopics.Sensors}{sensor.Slug}",
                heard is { } at ? InstantPattern.General.Format(at) : ""]);
        }
        foreach (MqttCredential gateway in await sensors.GatewaysAsync(cancellationToken))
            rows.Add([gateway.User, "gateway", "", gateway.TopicFilter, ""]);
        return rows;
    }
}
