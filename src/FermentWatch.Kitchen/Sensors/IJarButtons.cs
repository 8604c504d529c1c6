using NodaTime;

namespace FermentWatch.Kitchen.Sensors;

/// <summary>What becomes of a press on a button by the jars (topic <c>fermentwatch/jar/ID/checked</c>).</summary>
public interface IJarButtons
{
    /// <summary>Records that somebody looked at the jar and found it well; false if there is no such jar.</summary>
    /// <param name="jar">What stands in the topic: the jar's id or number, not yet looked up.</param>
    /// <param name="at">When the button was pressed, as far as is known.</param>
    /// <param name="cancellationToken">Gives up.</param>
    Task<bool> PressedAsync(string jar, Instant at, CancellationToken cancellationToken);
}
