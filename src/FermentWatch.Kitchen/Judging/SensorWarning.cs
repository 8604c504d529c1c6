namespace FermentWatch.Kitchen.Judging;

/// <summary>Something about a sensor that a person should look at.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Words">What it is and what to do, in a sentence or two.</param>
public sealed record SensorWarning(SensorWarningKind Kind, string Words)
{
    /// <summary>The other sensor of two that disagree.</summary>
    public Guid? OtherSensor { get; init; }
}
