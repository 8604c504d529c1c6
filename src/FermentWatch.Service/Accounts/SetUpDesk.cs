using FermentWatch.Kinetics;
using FermentWatch.Service.Pages.Entering;
using FermentWatch.Service.Pages.Home;
using FermentWatch.Storage.Records;
using Microsoft.AspNetCore.Identity;

namespace FermentWatch.Service.Accounts;

/// <summary>Makes the owner's account at first start, with the household and the ready places.</summary>
public sealed class SetUpDesk(SetUpToken token, UserManager<Account> accounts, SignInManager<Account> signing, HomeDesk home, ReadyPlaces ready, TimeProvider clock)
{
    private const int LongestName = 60;

    /// <summary>Sets up and signs the owner in; what was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> SetUpAsync(string? with, SetUpInput input, CancellationToken cancellationToken)
    {
        List<Refusal> refusals = Check(input);
        var owner = new Account { Id = Guid.CreateVersion7(clock.GetUtcNow()), UserName = input.User?.Trim(), DisplayName = input.User?.Trim() ?? "" };
        refusals.AddRange(await PasswordRefusalsAsync(owner, input.Password));
        if (refusals.Count > 0)
            return refusals;
        if (await home.WriteAsync(input.Household, cancellationToken) is { Count: > 0 } wrong)
            return wrong;
        IdentityResult? made = await token.UseAsync(with, () => accounts.CreateAsync(owner, input.Password!), cancellationToken);
        if (made is not { Succeeded: true })
            return [new Refusal("address", "this address", made?.Errors.First().Description ?? "sign in instead: somebody has set up this kitchen already")];
        await ready.MakeAsync(cancellationToken);
        await signing.SignInAsync(owner, isPersistent: true);
        return [];
    }

    private static List<Refusal> Check(SetUpInput input)
    {
        var refusals = new List<Refusal>();
        string name = (input.User ?? "").Trim();
        if (name.Length is 0 or > LongestName)
            refusals.Add(new("user", name.Length == 0 ? "nothing" : $"{name.Length} letters", $"a name of 1 to {LongestName} letters would be right"));
        if (input.Password != input.Again)
            refusals.Add(new("again", "another password", "the same password twice would be right"));
        return refusals;
    }

    private async Task<IEnumerable<Refusal>> PasswordRefusalsAsync(Account owner, string? password)
    {
        foreach (var validator in accounts.PasswordValidators)
            if (!(await validator.ValidateAsync(accounts, owner, password ?? "")).Succeeded)
                return [new("password", "this password", $"at least {accounts.Options.Password.RequiredLength} letters or signs, 4 of them different, would be right")];
        return [];
    }
}
