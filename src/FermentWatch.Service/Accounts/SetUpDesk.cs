using System.Security.Claims;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Typed;
using FermentWatch.Service.Pages.Entering;
using FermentWatch.Service.Pages.Home;
using FermentWatch.Storage.Records;
using Microsoft.AspNetCore.Identity;

namespace FermentWatch.Service.Accounts;

/// <summary>Makes the owner's account at first start, with the household and the ready places.</summary>
public sealed class SetUpDesk(SetUpToken token, UserManager<Account> accounts, SignIns signIns, HomeDesk home, ReadyPlaces ready, TimeProvider clock)
{
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
        IdentityResult? made = await token.UseAsync(with, () => MakeOwnerAsync(owner, input.Password!), cancellationToken);
        if (made is not { Succeeded: true })
            return [new Refusal("address", "this address", made?.Errors.First().Description ?? "sign in instead: somebody has set up this kitchen already")];
        await ready.MakeAsync(cancellationToken);
        await signIns.BeginAsync(owner, stay: true);
        return [];
    }

    private async Task<IdentityResult> MakeOwnerAsync(Account owner, string password)
    {
        IdentityResult made = await accounts.CreateAsync(owner, password);
        return made.Succeeded ? await accounts.AddClaimAsync(owner, new Claim(ClaimTypes.Role, nameof(MemberRole.Adult))) : made;
    }

    private static List<Refusal> Check(SetUpInput input)
    {
        var refusals = new List<Refusal>();
        if (SafeText.WrongName("user", (input.User ?? "").Trim()) is { } wrong)
            refusals.Add(wrong);
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
