using FermentWatch.Acts.Households;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Acts.Members;

/// <summary>Makes the owner's account at first start, with the household and the ready places.</summary>
public sealed class FoundHousehold(IAccountBook accounts, DescribeHousehold home, ReadyPlaces ready)
{
    /// <summary>Founds it.</summary>
    /// <param name="input">What the owner typed.</param>
    /// <param name="asTheFirst">Carries the making of the account out, unless somebody was faster: null then.</param>
    /// <param name="cancellationToken">Gives up before anything is written.</param>
    /// <returns>The owner's account, or what was wrong.</returns>
    public async Task<(KnownAccount? Owner, IReadOnlyList<Refusal> Refusals)> DoAsync(SetUpInput input,
        Func<Func<Task<IReadOnlyList<Refusal>>>, Task<IReadOnlyList<Refusal>?>> asTheFirst, CancellationToken cancellationToken)
    {
        string user = (input.User ?? "").Trim();
        IReadOnlyList<Refusal> refusals =
        [
            .. SafeText.WrongName("user", user) is { } wrongName ? [wrongName] : (Refusal[])[],
            .. input.Password != input.Again ? [new Refusal("again", "another password", "the same password twice would be right")] : (Refusal[])[],
            .. await accounts.WrongPasswordAsync(input.Password ?? "") is { } wrongPassword ? [wrongPassword] : (Refusal[])[],
        ];
        if (refusals.Count > 0)
            return (null, refusals);
        if (await home.DoAsync(input.Household, cancellationToken) is { Count: > 0 } wrong)
            return (null, wrong);
        IReadOnlyList<Refusal>? notMade = await asTheFirst(() => accounts.AddAsync(user, MemberRole.Adult, input.Password!));
        if (notMade is not { Count: 0 })
            return (null, notMade ?? [new Refusal("address", "this address", "sign in instead: somebody has set up this kitchen already")]);
        await ready.MakeAsync(cancellationToken);
        return (await accounts.FindAsync(user, CancellationToken.None), []);
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
