using System.Security.Claims;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Typed;
using FermentWatch.Service.Settings;
using FermentWatch.Storage.Records;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using NodaTime.Extensions;

namespace FermentWatch.Service.CommandLine.Members;

/// <summary>Where people who may sign in are added, listed and removed. A role is a claim of the account.</summary>
internal sealed class MemberDesk(UserManager<Account> accounts, ISignInBook doors, IJarBook jars, TimeProvider clock)
{
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
        if (SafeText.WrongName("name", name) is { } wrong)
            return [wrong];
        if (await accounts.FindByNameAsync(name) is not null)
            return [new Refusal("name", name, "somebody of that name is there already: another name would be right")];
        // Entries are signed with names: whoever comes later is another person.
        if ((await jars.AllAsync(default)).Any(jar => jar.Observations.Exists(each => string.Equals(each.By, name, StringComparison.OrdinalIgnoreCase))))
            return [new Refusal("name", name, $"somebody of that name was here before, and what was entered then bears it: another, such as {name} 2, would be right")];
        var account = new Account { Id = Guid.CreateVersion7(clock.GetUtcNow()), UserName = name, DisplayName = name };
        IdentityResult made = await accounts.CreateAsync(account, password);
        if (made.Succeeded)
            made = await accounts.AddClaimAsync(account, new Claim(ClaimTypes.Role, role.ToString()));
        return Refusals(made);
    }

    /// <summary>Makes an adult a child, or the other way round, which ends this person's sessions; what was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> SetRoleAsync(string name, MemberRole role, CancellationToken cancellationToken)
    {
        if (await accounts.FindByNameAsync(name.Trim()) is not { } account)
            return [await UnknownAsync(name, cancellationToken)];
        if (role == MemberRole.Child && await IsLastAdultAsync(account, cancellationToken))
            return [new Refusal("role", role.ToString(), "the last adult stays one: make another first")];
        foreach (Claim before in (await accounts.GetClaimsAsync(account)).Where(claim => claim.Type == ClaimTypes.Role))
            await accounts.RemoveClaimAsync(account, before);
        if (Refusals(await accounts.AddClaimAsync(account, new Claim(ClaimTypes.Role, role.ToString()))) is { Count: > 0 } refusals)
            return refusals;
        await doors.CloseAsync(account.DisplayName, DoorsClosed.RoleChanged, clock.GetUtcNow().ToInstant(), cancellationToken);
        return [];
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
        if (Refusals(await accounts.UpdateSecurityStampAsync(account)) is { Count: > 0 } failed)
            return failed;
        await doors.CloseAsync(account.DisplayName, DoorsClosed.PasswordChanged, clock.GetUtcNow().ToInstant(), cancellationToken);
        return [];
    }

    /// <summary>Removes somebody; what they entered stays. What was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> RemoveAsync(string name, CancellationToken cancellationToken)
    {
        if (await accounts.FindByNameAsync(name.Trim()) is not { } account)
            return [await UnknownAsync(name, cancellationToken)];
        if (await IsLastAdultAsync(account, cancellationToken))
            return [new Refusal("name", account.UserName!, "the last adult stays: add another first")];
        await doors.CloseAsync(account.DisplayName, DoorsClosed.Removed, clock.GetUtcNow().ToInstant(), cancellationToken);
        return Refusals(await accounts.DeleteAsync(account));
    }

    private async Task<bool> IsLastAdultAsync(Account account, CancellationToken cancellationToken) =>
        await RoleOfAsync(account) == MemberRole.Adult && (await AllAsync(cancellationToken)).Count(member => member.Role == MemberRole.Adult) == 1;

    /// <summary>Whoever is not said to be an adult is none.</summary>
    private async Task<MemberRole> RoleOfAsync(Account account) =>
        (await accounts.GetClaimsAsync(account)).Where(claim => claim.Type == ClaimTypes.Role).Select(claim => claim.Value).ToList() is [nameof(MemberRole.Adult)]
            ? MemberRole.Adult : MemberRole.Child;

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
