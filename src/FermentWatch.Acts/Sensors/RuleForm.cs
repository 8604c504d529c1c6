namespace FermentWatch.Acts.Sensors;

/// <summary>What somebody typed to say how a sensor that was not made for us is to be read, as typed.</summary>
public sealed record RuleForm
{
    /// <summary>MQTT topic filter; <c>{device}</c> stands for the level that names the sensor.</summary>
    public string? Topic { get; init; }

    /// <summary>The sensor it feeds, by its name in topics; empty where the topic names it.</summary>
    public string? Sensor { get; init; }

    /// <summary><c>number</c>, <c>json</c> or <c>senml</c>; empty is JSON where there is a pointer to the value, else a number.</summary>
    public string? Payload { get; init; }

    /// <summary><c>temperature</c>, <c>ph</c>, <c>millivolts</c> or <c>humidity</c>; empty is what the unit measures.</summary>
    public string? Quantity { get; init; }

    /// <summary>JSON Pointer to the value.</summary>
    public string? ValueAt { get; init; }

    /// <summary>The unit, such as <c>Cel</c> or <c>degF</c>.</summary>
    public string? Unit { get; init; }

    /// <summary>JSON Pointer to the unit.</summary>
    public string? UnitAt { get; init; }

    /// <summary><c>s</c>, <c>ms</c> or <c>iso8601</c>; empty where arrival is the time.</summary>
    public string? Time { get; init; }

    /// <summary>JSON Pointer to the time.</summary>
    public string? TimeAt { get; init; }

    /// <summary>What the names of records in a SenML pack begin with.</summary>
    public string? Record { get; init; }

    /// <summary>Added to every value, in the unit in which the quantity is stored; empty is 0.</summary>
    public string? Offset { get; init; }

    /// <summary>Smallest plausible value; a temperature may carry its unit, else it is in the unit in which the quantity is stored.</summary>
    public string? Low { get; init; }

    /// <summary>Largest plausible value.</summary>
    public string? High { get; init; }

    /// <summary>Longest silence, such as <c>6h</c> or <c>2d</c>; empty is judged by the sensor's own rhythm.</summary>
    public string? LongestSilence { get; init; }
}
