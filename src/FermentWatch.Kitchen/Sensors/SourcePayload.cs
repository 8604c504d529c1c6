namespace FermentWatch.Kitchen.Sensors;

/// <summary>What the payload of a source is.</summary>
public enum SourcePayload
{
    /// <summary>One number and nothing else.</summary>
    Number = 1,

    /// <summary>A JSON document with the value at a place in it.</summary>
    Json = 2,

    /// <summary>A SenML pack in JSON (RFC 8428).</summary>
    SenMl = 3,
}
