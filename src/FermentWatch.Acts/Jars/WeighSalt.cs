using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.PuttingUp;

namespace FermentWatch.Acts.Jars;

/// <summary>How much salt goes into a jar, asked while the form is filled in. Writes nothing.</summary>
public sealed class WeighSalt(IHouseholdBook households)
{
    /// <summary>The salt for each jar, null where it is by taste; or what of vegetables, water and salt cannot be used.</summary>
    public async Task<(SaltToWeigh? Salt, IReadOnlyList<Refusal> Refusals)> ForAsync(PutUpForm form, CancellationToken cancellationToken) =>
        PutUp.Weigh(form, await households.ReadAsync(cancellationToken));
}
