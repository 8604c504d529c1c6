namespace FermentWatch.Kitchen.Publishing;

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
