using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Kitchen.Troubles;

/// <summary>What trouble means for a jar at present.</summary>
/// <param name="Last">The last sighting that was trouble; null if there never was one.</param>
/// <param name="ForecastWithdrawn">The model has no term for spoilage: nothing is forecast until a pH is measured.</param>
/// <param name="CloserWatch">The jar is opened and looked at daily.</param>
public sealed record TroubleState(Sighting? Last, bool ForecastWithdrawn, bool CloserWatch);
