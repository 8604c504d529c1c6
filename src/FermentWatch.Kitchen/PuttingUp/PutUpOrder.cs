using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>A form that was read: the jars to be filed, or every field that was wrong or odd.</summary>
/// <param name="Jars">Jars without numbers, each with its first placement; empty if anything was wrong or is asked about.</param>
/// <param name="Refusals">What was wrong, every field at once.</param>
/// <param name="Doubts">What is odd and was not insisted on.</param>
public sealed record PutUpOrder(IReadOnlyList<Jar> Jars, IReadOnlyList<Refusal> Refusals, IReadOnlyList<Doubt> Doubts)
{
    public PutUpOrder(IReadOnlyList<Jar> jars) : this(jars, [], [])
    {
    }
}
