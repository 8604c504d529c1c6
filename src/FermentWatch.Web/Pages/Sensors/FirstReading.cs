using FermentWatch.Acts.Households;
using FermentWatch.Acts.Sensors;
using FermentWatch.Kitchen.Words;
using FermentWatch.Web.Pages.Shared;

namespace FermentWatch.Web.Pages.Sensors;

/// <summary>Whether a sensor has reported, in words, for whoever has just set it up and waits.</summary>
/// <param name="Arrived">Whether a reading came.</param>
/// <param name="Words">The value and when it came; or that it is waited for, and what came in its place.</param>
public sealed record FirstReading(bool Arrived, string Words)
{
    public static FirstReading Of(HeardOf heard, Present present) => heard switch
    {
        { Last.Reading: var last } when heard.Last is not null => new(true,
            $"{ReadingWords.Value(last.Quantity, last.Value, present.Household.TemperatureUnit)}, "
            + $"{TimeWords.Of(last.MeasuredAt, present.Now, present.Household)}"),
        { Wrong.Last: { } wrong } => new(false, $"Something came and {ReadingWords.Of(wrong.Reason)}: “{wrong.Example}”. {wrong.Explanation}"),
        _ => new(false, ""),
    };
}

/// <summary>Asked by the page that waits, where it has script; without, the page loads itself again.</summary>
internal static class FirstReadingDoor
{
    public static void MapFirstReading(this WebApplication app) => app.MapGet("/sensors/{slug}/heard", HeardAsync).ExcludeFromDescription();

    private static async Task<IResult> HeardAsync(
        string slug, SensorReader sensors, HouseholdReader home, CancellationToken cancellationToken) =>
        await sensors.FindAsync(slug, cancellationToken) is { } sensor
            ? Results.Json(FirstReading.Of(await sensors.HeardAsync(sensor, cancellationToken), await home.NowAsync(cancellationToken)))
            : Results.NotFound();
}
