using System.Collections.Concurrent;
using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Intake.Sources;

/// <summary>
/// The source rules, ready for use. They are read again every few seconds, and at most once a second for a topic that none of
/// them matches, so that a rule added by another process works at once.
/// </summary>
public sealed class SourceRuleSet(ISourceRuleBook book, TimeProvider time)
{
    /// <summary>How long a rule that was removed may still be used.</summary>
    public static readonly TimeSpan Remembered = TimeSpan.FromSeconds(10);

    private static readonly TimeSpan _atMostEvery = TimeSpan.FromSeconds(1);

    private readonly ConcurrentDictionary<SourceFeed, bool> _noted = new();

    private volatile Loaded? _loaded;

    /// <summary>What is wrong with rules that could not be used, as they were last read.</summary>
    public IReadOnlyList<string> Wrong => _loaded?.Wrong ?? [];

    /// <summary>The rules that match a topic.</summary>
    public async ValueTask<IReadOnlyList<SourceReader>> ForAsync(string topic, CancellationToken cancellationToken)
    {
        Loaded loaded = await LoadedAsync(Remembered, cancellationToken);
        IReadOnlyList<SourceReader> matching = loaded.For(topic);
        return matching.Count > 0 ? matching : (await LoadedAsync(_atMostEvery, cancellationToken)).For(topic);
    }

    /// <summary>The topic filters of all rules, as a broker understands them.</summary>
    public async ValueTask<IReadOnlyList<string>> FiltersAsync(CancellationToken cancellationToken) =>
        [.. (await LoadedAsync(_atMostEvery, cancellationToken)).Readers.Select(reader => reader.Filter.Mqtt).Distinct()];

    /// <summary>Has the book note that a rule feeds a sensor; asks it once for each pair.</summary>
    public async ValueTask NoteFeedAsync(SourceRule rule, Sensor sensor, CancellationToken cancellationToken)
    {
        var feed = new SourceFeed(rule.Id, sensor.Id);
        if (_noted.ContainsKey(feed))
            return;
        await book.NoteFeedAsync(feed, cancellationToken);
        _noted[feed] = true;
    }

    private async ValueTask<Loaded> LoadedAsync(TimeSpan notOlderThan, CancellationToken cancellationToken)
    {
        if (_loaded is { } known && time.GetElapsedTime(known.At) < notOlderThan)
            return known;
        var readers = new List<SourceReader>();
        var wrong = new List<string>();
        foreach (SourceRule rule in await book.AllAsync(cancellationToken))
        {
            string[] errors = [.. SourceReader.Errors(rule)];
            if (errors.Length == 0)
                readers.Add(SourceReader.Of(rule));
            else
                wrong.Add($"The rule for {rule.TopicFilter} is not used. {string.Join(" ", errors)}");
        }
        return _loaded = new Loaded(readers, wrong, time.GetTimestamp());
    }

    private sealed record Loaded(IReadOnlyList<SourceReader> Readers, IReadOnlyList<string> Wrong, long At)
    {
        public IReadOnlyList<SourceReader> For(string topic) => [.. Readers.Where(reader => reader.Filter.Matches(topic))];
    }
}
