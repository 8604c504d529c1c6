namespace FermentWatch.Acts.Sensors;

/// <summary>A sensor or gateway to be added, as it was typed.</summary>
/// <param name="Name">What the household calls it.</param>
/// <param name="Place">Name of the place it stands in.</param>
/// <param name="Gateway">Topic filter of a gateway; null for a sensor.</param>
/// <param name="By">Who of the household adds it; null on the command line.</param>
internal sealed record AddInput(string Name, string? Place, string? Gateway, string? By = null);
