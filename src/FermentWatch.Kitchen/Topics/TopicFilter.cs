namespace FermentWatch.Kitchen.Topics;

/// <summary>Topic filters of MQTT: levels parted by '/', where '+' is any one level and a last '#' the level before it and all below.</summary>
public static class TopicFilter
{
    private const int LongestBytes = 65_535;

    /// <summary>What is wrong with a filter and what would be right, or null.</summary>
    public static string? WhatIsWrong(string filter)
    {
        if (filter.Length == 0)
            return "The topic filter is empty; a filter like 'sensors/+/temperature' belongs here.";
        if (System.Text.Encoding.UTF8.GetByteCount(filter) > LongestBytes || filter.Contains('\0'))
            return "The topic filter is too long or holds a NUL character.";
        string[] levels = filter.Split('/');
        for (int i = 0; i < levels.Length; i++)
        {
            if (levels[i].Contains('+') && levels[i] != "+")
                return $"In the topic filter '{filter}' the '+' must stand alone between two slashes.";
            if (levels[i].Contains('#') && (levels[i] != "#" || i != levels.Length - 1))
                return $"In the topic filter '{filter}' the '#' must stand alone at the end.";
        }
        return null;
    }

    /// <summary>Whether the topic lies under the filter.</summary>
    public static bool Matches(string topic, string filter) =>
        // The library's comparer does not find "a" under "+/#", where MQTT puts it.
        !topic.AsSpan().ContainsAny('+', '#') && Covers(filter, topic);

    /// <summary>Whether every topic under <paramref name="inner"/> lies under <paramref name="outer"/> too.</summary>
    public static bool Covers(string outer, string inner)
    {
        // MQTT keeps topics that begin with $ out of filters that begin with a wildcard.
        if (inner.StartsWith('$') && !outer.StartsWith('$'))
            return false;
        string[] outers = outer.Split('/'), inners = inner.Split('/');
        for (int i = 0; ; i++)
        {
            if (i == outers.Length)
                return i == inners.Length;
            if (outers[i] == "#")
                return true;
            if (i == inners.Length)
                return outers[i..] is ["#"];
            if (inners[i] == "#" || (outers[i] != "+" && outers[i] != inners[i]))
                return false;
        }
    }
}
