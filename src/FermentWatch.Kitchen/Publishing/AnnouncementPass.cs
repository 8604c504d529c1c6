using System.Text;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.Publishing;

/// <summary>
/// Tells home hubs of the jars that are kept, and takes back what was said of others, or of all once it is switched off. What was
/// said is on record before it is said: a broker keeps it for ever, and only who knows the topic can take it back.
/// </summary>
public sealed class AnnouncementPass(AnnouncementOptions options, IJarBook jars, IAnnouncementBook book, IMessageOutlet outlet, SetAside setAside)
{
    /// <summary>The name under which it sets things aside.</summary>
    public const string Name = "announcement";

    private readonly Dictionary<string, string> _said = [];

    private volatile bool _all;

    /// <summary>Has the next pass say everything, because a broker is there that may know nothing of it.</summary>
    public void SayAllAgain() => _all = true;

    /// <summary>Says what is new and takes back what no longer holds.</summary>
    public async Task RunAsync(CancellationToken cancellationToken)
    {
        if (_all)
            _said.Clear();
        _all = false;
        var wanted = new Dictionary<string, string>();
        using SetAside.SetAsideRun run = setAside.Begin(Name);
        foreach (Jar jar in options.Enabled ? await jars.KeptAsync(cancellationToken) : [])
            run.Try($"jar {jar.Number}", () =>
            {
                foreach ((string topic, string payload) in JarAnnouncement.Of(jar, options.Prefix))
                    wanted[topic] = payload;
            });
        IReadOnlyList<string> onRecord = await book.TopicsAsync(cancellationToken);
        await TakeBackAsync([.. onRecord.Except(wanted.Keys)], cancellationToken);
        string[] unknown = [.. wanted.Keys.Except(onRecord)];
        if (unknown.Length > 0)
            await book.AddAsync(unknown, cancellationToken);
        foreach ((string topic, string payload) in wanted)
            if (_said.GetValueOrDefault(topic) != payload
                && await outlet.PublishAsync(topic, Encoding.UTF8.GetBytes(payload), retain: true, cancellationToken))
                _said[topic] = payload;
    }

    private async Task TakeBackAsync(string[] topics, CancellationToken cancellationToken)
    {
        var gone = new List<string>();
        foreach (string topic in topics)
        {
            // One that no broker heard yet stays on record, and the next pass tries again.
            if (await outlet.PublishAsync(topic, ReadOnlyMemory<byte>.Empty, retain: true, cancellationToken))
                gone.Add(topic);
            _said.Remove(topic);
        }
        if (gone.Count > 0)
            await book.RemoveAsync(gone, cancellationToken);
    }
}

/// <summary>Settings of the announcements to home hubs.</summary>
public sealed class AnnouncementOptions
{
    /// <summary>Whether a home hub is told of the jars. Default: no.</summary>
    public bool Enabled { get; set; }

    /// <summary>The first levels of the discovery topics. Default: that of the usual convention.</summary>
    public string Prefix { get; set; } = "homeassistant";

    /// <summary>Everything wrong with the settings: which, what came, what would be right.</summary>
    public IEnumerable<string> Errors()
    {
        if (Prefix.Length is 0 or > 100 || Prefix.IndexOfAny(['+', '#', '$', '\0']) >= 0 || Prefix[0] == '/' || Prefix[^1] == '/')
            yield return $"Prefix is '{Prefix}'; the beginning of a topic belongs here, without wildcards and without a slash at its ends.";
    }
}
