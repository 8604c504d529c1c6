using FermentWatch.Kitchen.Sensors;
using FermentWatch.Kitchen.Topics;

namespace FermentWatch.Intake.Sources;

/// <summary>The topic filter of a source rule, with the place of the device in it.</summary>
public sealed class SourceFilter
{
    /// <summary>How the place of the device is written.</summary>
    public const string DevicePlace = "{device}";

    private readonly int _deviceLevel;

    private SourceFilter(string mqtt, int deviceLevel)
    {
        Mqtt = mqtt;
        _deviceLevel = deviceLevel;
    }

    /// <summary>The filter as a broker understands it.</summary>
    public string Mqtt { get; }

    /// <summary>Whether the topic names the device.</summary>
    public bool NamesDevice => _deviceLevel >= 0;

    /// <summary>Reads a filter; <paramref name="wrong"/> says what is wrong with it.</summary>
    public static SourceFilter? Parse(string text, out string? wrong)
    {
        string[] levels = text.Split('/');
        int device = Array.IndexOf(levels, DevicePlace);
        string mqtt = string.Join('/', levels.Select(level => level == DevicePlace ? "+" : level));
        wrong = TopicFilter.WhatIsWrong(mqtt);
        if (wrong is null && (levels.Count(level => level == DevicePlace) > 1 || mqtt.Contains(DevicePlace, StringComparison.Ordinal)))
            wrong = $"In the topic filter '{text}' {DevicePlace} must stand once, alone between two slashes.";
        return wrong is null ? new SourceFilter(mqtt, device) : null;
    }

    /// <summary>Whether the topic lies under the filter.</summary>
    public bool Matches(string topic) => TopicFilter.Matches(topic, Mqtt);

    /// <summary>
    /// The slug of the device that the topic names: in lower case, all but letters and digits made into hyphens, so that
    /// <c>A4:C1:38:0A</c> is <c>a4-c1-38-0a</c>. Null where the filter has no place for it or nothing is left.
    /// </summary>
    public string? DeviceSlug(string topic)
    {
        string[] levels = topic.Split('/');
        return NamesDevice && _deviceLevel < levels.Length ? SensorSlug.From(levels[_deviceLevel]) : null;
    }
}
