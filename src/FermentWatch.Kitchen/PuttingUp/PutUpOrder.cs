using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>A form that was read: the jars to be filed, or every field that was wrong.</summary>
/// <param name="Jars">Jars without numbers, each with its first placement; empty if anything was wrong.</param>
/// <param name="Refusals">What was wrong, every field at once.</param>
public sealed record PutUpOrder(IReadOnlyList<Jar> Jars, IReadOnlyList<Kinetics.Refusal> Refusals);
