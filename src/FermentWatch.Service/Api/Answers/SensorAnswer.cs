using FermentWatch.Service.Pages.Sensors;

namespace FermentWatch.Service.Api.Answers;

/// <summary>A sensor.</summary>
/// <param name="Slug">Its name in topics.</param>
/// <param name="Name">What the household calls it.</param>
/// <param name="Place">The place it measures, if any.</param>
/// <param name="JarNumber">The jar its probe is in, if any.</param>
/// <param name="Last">Its last reading of each quantity.</param>
/// <param name="Warnings">What a person should look at, in words.</param>
/// <param name="ReadingsByVerdict">How many readings have each verdict.</param>
public sealed record SensorAnswer(
    string Slug, string Name, string? Place, int? JarNumber, IReadOnlyList<LastReadingAnswer> Last, IReadOnlyList<string> Warnings,
    IReadOnlyDictionary<string, long> ReadingsByVerdict)
{
    public static SensorAnswer Of(SensorView view) => new(view.Sensor.Slug, view.Sensor.Name, view.Place?.Name, view.Jar?.Number,
        [.. view.Last.Select(last => new LastReadingAnswer(last.Reading.Quantity, last.Reading.Value, last.Reading.MeasuredAt, last.Verdict))],
        [.. view.Warnings.Select(warning => warning.Words)],
        view.Verdicts.ToDictionary(entry => entry.Key.ToString(), entry => entry.Value));
}
