using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Kitchen.Sensors;

/// <summary>What source rules say of the sensors they feed: a rule holds for the sensor it names, and for every one it has fed.</summary>
public sealed class SourceLimits(IReadOnlyList<SourceRule> rules, IReadOnlyList<SourceFeed> feeds)
{
    private readonly HashSet<SourceFeed> _feeds = [.. feeds];

    /// <summary>The rules that hold for a sensor.</summary>
    public IEnumerable<SourceRule> RulesOf(Sensor sensor) => rules.Where(rule =>
        _feeds.Contains(new SourceFeed(rule.Id, sensor.Id)) || (rule.SensorSlug == sensor.Slug && sensor.RemovedAt is null));

    /// <summary>What a quantity of a sensor can plausibly show. Where several rules say it, the widest of them holds.</summary>
    public PlausibleRange RangeOf(Sensor sensor, Quantity quantity)
    {
        PlausibleRange range = MeasuredQuantity.Of(quantity).Range;
        // A pack holds whatever its units say, so that its rule is for every quantity.
        var holding = RulesOf(sensor).Where(rule => rule.Quantity is null || rule.Quantity == quantity).ToList();
        return range with
        {
            Low = holding.Min(rule => rule.PlausibleLow) ?? range.Low,
            High = holding.Max(rule => rule.PlausibleHigh) ?? range.High,
        };
    }

    /// <summary>How long a sensor may be silent by its rules, the longest of them; null where none says it.</summary>
    public Duration? LongestSilenceOf(Sensor sensor) => RulesOf(sensor).Max(rule => rule.LongestSilence);
}
