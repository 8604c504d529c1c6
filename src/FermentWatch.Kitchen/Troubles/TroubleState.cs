using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Kitchen.Troubles;

/// <summary>What trouble means for a jar at present.</summary>
/// <param name="Last">The sighting that counts: the worst that goes on, else the last there was; null if there never was one.</param>
/// <param name="ForecastWithdrawn">The model has no term for spoilage: nothing is forecast until a pH is measured or small trouble is
/// settled.</param>
/// <param name="CloserWatch">The jar is opened and looked at daily.</param>
public sealed record TroubleState(Sighting? Last, bool ForecastWithdrawn, bool CloserWatch)
{
    /// <summary>Whether the pH rises: by itself a reason to withdraw the forecast.</summary>
    public bool Rising { get; init; }

    /// <summary>Pressure or brine pushed out that nobody has seen to or found well since; null where there is none.</summary>
    public Sighting? Pressure { get; init; }

    /// <summary>What was done about <see cref="Last"/>; null where nothing was, or nothing settles it.</summary>
    public Handling? Handled { get; init; }

    /// <summary>Days on which all must be well before what was done settles it; 0 where nothing waits for that.</summary>
    public int WellDaysToGo { get; init; }

    /// <summary>What would settle <see cref="Last"/> or <see cref="Pressure"/> and was not done yet; null where nothing would.</summary>
    public HandlingKind? Remedy { get; init; }
}
