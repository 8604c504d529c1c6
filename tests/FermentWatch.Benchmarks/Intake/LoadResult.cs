namespace FermentWatch.Benchmarks.Intake;

/// <summary>What a load came to.</summary>
/// <param name="PerSecond">Acknowledged messages a second.</param>
/// <param name="Slowest">The slowest acknowledgement.</param>
internal sealed record LoadResult(double PerSecond, TimeSpan Slowest);
