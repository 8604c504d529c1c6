using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Service.Demo.Household;

/// <summary>What somebody of the invented household did or saw at a jar.</summary>
/// <param name="Day">Days after packing.</param>
/// <param name="By">Who.</param>
/// <param name="Do">Makes what is filed of it.</param>
internal sealed record Deed(double Day, string By, Func<DeedAt, IEnumerable<Observation>> Do)
{
    /// <summary>Where the jar was moved to at the same time; null if it stayed.</summary>
    public string? MovedTo { get; init; }
}
