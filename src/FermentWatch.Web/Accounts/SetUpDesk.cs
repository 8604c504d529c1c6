using FermentWatch.Acts.Members;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Members;

namespace FermentWatch.Web.Accounts;

/// <summary>Where the owner sets up the kitchen at first start, and is signed in by it.</summary>
public sealed class SetUpDesk(SetUpToken token, FoundHousehold found, SignIns signIns)
{
    /// <summary>Sets up and signs the owner in; what was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> SetUpAsync(HttpContext context, string? with, SetUpInput input)
    {
        (KnownAccount? owner, IReadOnlyList<Refusal> refusals) = await found.DoAsync(input,
            make => token.UseAsync(with, make, context.RequestAborted), context.RequestAborted);
        if (owner is not null)
            await signIns.BeginAsync(context, owner, stay: true);
        return refusals;
    }
}
