using FermentWatch.Acts.Households;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Web.Accounts;

/// <summary>Makes the owner's account at first start, with the household and the ready places.</summary>
public sealed class SetUpDesk(SetUpToken token, IAccountBook accounts, SignIns signIns, DescribeHousehold home, ReadyPlaces ready)
{
    /// <summary>Sets up and signs the owner in; what was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> SetUpAsync(HttpContext context, string? with, SetUpInput input)
    {
        string user = (input.User ?? "").Trim();
        IReadOnlyList<Refusal> refusals =
        [
            .. SafeText.WrongName("user", user) is { } wrongName ? [wrongName] : (Refusal[])[],
            .. input.Password != input.Again ? [new Refusal("again", "another password", "the same password twice would be right")] : (Refusal[])[],
            .. await accounts.WrongPasswordAsync(input.Password ?? "") is { } wrongPassword ? [wrongPassword] : (Refusal[])[],
        ];
        if (refusals.Count > 0)
            return refusals;
        if (await home.DoAsync(input.Household, context.RequestAborted) is { Count: > 0 } wrong)
            return wrong;
        IReadOnlyList<Refusal>? notMade = await token.UseAsync(with, () =>
            accounts.AddAsync(user, MemberRole.Adult, input.Password!), context.RequestAborted);
        if (notMade is not { Count: 0 })
            return notMade ?? [new Refusal("address", "this address", "sign in instead: somebody has set up this kitchen already")];
        await ready.MakeAsync(context.RequestAborted);
        await signIns.BeginAsync(context, (await accounts.FindAsync(user, CancellationToken.None))!, stay: true);
        return [];
    }
}

/// <summary>What the owner types at first start.</summary>
public sealed class SetUpInput
{
    public string? User { get; set; }

    public string? Password { get; set; }

    public string? Again { get; set; }

    public HouseholdInput Household { get; set; } = new();
}
