using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Salts;

namespace FermentWatch.Acts.Jars;

/// <summary>Answers what a hydrometer shows in a brine. Writes nothing.</summary>
public sealed class AskBrine(IHouseholdBook households)
{
    /// <summary>The brine, or what was wrong.</summary>
    public async Task<(BrineShown? Brine, IReadOnlyList<Refusal> Refusals)> ForAsync(BrineForm form, CancellationToken cancellationToken) =>
        BrineShown.For(form, await households.ReadAsync(cancellationToken));
}
