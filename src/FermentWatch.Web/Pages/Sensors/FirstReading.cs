using FermentWatch.Acts.Sensors;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Words;
using FermentWatch.Web.Pages.Shared;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Web.Pages.Sensors;

/// <summary>Whether a sensor has reported, in words, for whoever has just set it up and waits.</summary>
/// <param name="Arrived">Whether a reading came.</param>
/// <param name="Words">The value and when it came; or that it is waited for, and what came in its place.</param>
public sealed record FirstReading(bool Arrived, string Words)
{
    public static async Task<FirstReading> OfAsync(Sensor sensor, IReadingLog log, Household household, Instant now,
        CancellationToken cancellationToken)
    {
        if (await log.LastAsync(sensor.Key, cancellationToken) is [var last, ..])
            return new FirstReading(true, $"{ReadingWords.Value(last.Reading.Quantity, last.Reading.Value, household.TemperatureUnit)}, {TimeWords.Of(last.Reading.MeasuredAt, now, household)}");
        RejectCount? wrong = (await log.RejectsAsync(cancellationToken)).FirstOrDefault(each => each.Last.SensorKey == sensor.Key);
        return new FirstReading(false, wrong is null ? ""
            : $"Something came and {ReadingWords.Of(wrong.Last.Reason)}: “{wrong.Last.Example}”. {wrong.Last.Explanation}");
    }
}

/// <summary>Asked by the page that waits, where it has script; without, the page loads itself again.</summary>
internal static class FirstReadingDoor
{
    public static void MapFirstReading(this WebApplication app) => app.MapGet("/sensors/{slug}/heard", HeardAsync).ExcludeFromDescription();

    private static async Task<IResult> HeardAsync(
        string slug, ISensorBook sensors, IReadingLog log, IHouseholdBook households, TimeProvider clock, CancellationToken cancellationToken) =>
        await sensors.FindAsync(slug, cancellationToken) is { } sensor
            ? Results.Json(await FirstReading.OfAsync(sensor, log, await households.ReadAsync(cancellationToken), clock.GetUtcNow().ToInstant(), cancellationToken))
            : Results.NotFound();
}
