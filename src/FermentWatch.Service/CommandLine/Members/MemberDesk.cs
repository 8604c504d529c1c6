using System.Security.Claims;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Members;
using FermentWatch.Service.Settings;
using FermentWatch.Storage.Records;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Service.CommandLine.Members;

/// <summary>Where people who may sign in are added, listed and removed. A role is a claim of the account.</summary>
internal sealed class MemberDesk(UserManager<Account> accounts, TimeProvider clock)
{
    private const int LongestName = 60;

    /// <summary>Everybody who may sign in, by name.</summary>
    public async Task<IReadOnlyList<Member>> AllAsync(CancellationToken cancellationToken)
    {
        var members = new List<Member>();
        foreach (Account account in await accounts.Users.OrderBy(account => account.NormalizedUserName).ToListAsync(cancellationToken))
            members.Add(new Member(account.UserName!, await RoleOfAsync(account)));
        return members;
    }

    /// <summary>Adds somebody; what was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> AddAsync(string name, MemberRole role, string password)
    {
        name = name.Trim();
        if (name.Length is 0 or > LongestName)
            return [new Refusal("name", name.Length == 0 ? "nothing" : $"{name.Length} letters", $"a name of 1 to {LongestName} letters would be right")];
        if (await accounts.FindByNameAsync(name) is not null)
            return [new Refusal("name", name, "somebody of that name is there already: another name would be right")];
        var account = new Account { Id = Guid.CreateVersion7(clock.GetUtcNow()), UserName = name, DisplayName = name };
        IdentityResult made = await accounts.CreateAsync(account, password);
        if (made.Succeeded)
            made = await accounts.AddClaimAsync(account, new Claim(ClaimTypes.Role, role.ToString()));
        return Refusals(made);
    }

    /// <summary>Sets a new password, which ends the sessions begun with the old one; what was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> SetPasswordAsync(string name, string password, CancellationToken cancellationToken)
    {
        if (await accounts.FindByNameAsync(name.Trim()) is not { } account)
            return [await UnknownAsync(name, cancellationToken)];
        foreach (IPasswordValidator<Account> validator in accounts.PasswordValidators)
            if (Refusals(await validator.ValidateAsync(accounts, account, password)) is { Count: > 0 } refusals)
                return refusals;
        account.PasswordHash = accounts.PasswordHasher.HashPassword(account, password);
        account.LockoutEnd = null;
        account.AccessFailedCount = 0;
        // The stamp is saved together with the hash.
        return Refusals(await accounts.UpdateSecurityStampAsync(account));
    }

    /// <summary>Removes somebody; what they entered stays. What was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> RemoveAsync(string name, CancellationToken cancellationToken)
    {
        if (await accounts.FindByNameAsync(name.Trim()) is not { } account)
            return [await UnknownAsync(name, cancellationToken)];
        IReadOnlyList<Member> all = await AllAsync(cancellationToken);
        if (await RoleOfAsync(account) == MemberRole.Adult && all.Count(member => member.Role == MemberRole.Adult) == 1)
            return [new Refusal("name", account.UserName!, "the last adult stays: add another first")];
        return Refusals(await accounts.DeleteAsync(account));
    }

    /// <summary>An account without a role is the owner's, made at first start.</summary>
    private async Task<MemberRole> RoleOfAsync(Account account) =>
        (await accounts.GetClaimsAsync(account)).Any(claim => claim.Type == ClaimTypes.Role && claim.Value == nameof(MemberRole.Child)) ? MemberRole.Child : MemberRole.Adult;

    private async Task<Refusal> UnknownAsync(string name, CancellationToken cancellationToken)
    {
        string[] known = [.. (await AllAsync(cancellationToken)).Select(member => member.Name)];
        string right = NearestName.Of(name, known) is { } nearest ? $"did you mean {nearest}?"
            : known.Length > 0 ? $"one of {string.Join(", ", known)} would be right" : "nobody can sign in yet";
        return new Refusal("name", name, right);
    }

    private static List<Refusal> Refusals(IdentityResult result) =>
        [.. result.Errors.Select(error => error.Code.StartsWith("Password", StringComparison.Ordinal)
            ? new Refusal("password", "what was given", error.Description)
            : new Refusal("name", "what was given", error.Description))];
}
