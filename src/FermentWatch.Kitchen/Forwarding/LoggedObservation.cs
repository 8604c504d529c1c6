using FermentWatch.Kitchen.Observations;
using NodaTime;

namespace FermentWatch.Kitchen.Forwarding;

/// <summary>An observation as it is passed on.</summary>
/// <param name="Observation">What was seen.</param>
/// <param name="Before">How many observations of the same jar and instant were entered before it; never changes.</param>
public sealed record LoggedObservation(Observation Observation, int Before)
{
    /// <summary>
    /// When it was seen, moved on by one millisecond for each one before it, so that two of the same instant are two points.
    /// </summary>
    public Instant At => Observation.At + Duration.FromMilliseconds(Before);
}
