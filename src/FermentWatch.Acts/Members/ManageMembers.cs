using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Members;

/// <summary>Where people who may sign in are added, listed and removed.</summary>
public sealed class ManageMembers(IAccountBook accounts, ISignInBook doors, TimeProvider clock)
{
    private Instant Now => clock.GetUtcNow().ToInstant();

    /// <summary>Everybody who may sign in, by name.</summary>
    public Task<IReadOnlyList<KnownAccount>> AllAsync(CancellationToken cancellationToken) => accounts.AllAsync(cancellationToken);

    /// <summary>Adds somebody; what was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> AddAsync(string name, MemberRole role, string password)
    {
        name = name.Trim();
        if (SafeText.WrongName("name", name) is { } wrong)
            return [wrong];
        if (await accounts.FindAsync(name, default) is not null)
            return [new Refusal("name", name, "somebody of that name is there already: another name would be right")];
        return await accounts.AddAsync(name, role, password);
    }

    /// <summary>Makes an adult a child, or the other way round, which ends this person's sessions; what was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> SetRoleAsync(string name, MemberRole role, CancellationToken cancellationToken)
    {
        if (await accounts.FindAsync(name.Trim(), cancellationToken) is not { } account)
            return [await UnknownAsync(name, cancellationToken)];
        if (role == MemberRole.Child && await IsLastAdultAsync(account, cancellationToken))
            return [new Refusal("role", role.ToString(), "the last adult stays one: make another first")];
        if (await accounts.SetRoleAsync(account, role) is { Count: > 0 } refusals)
            return refusals;
        await doors.CloseAsync(account.Name, DoorsClosed.RoleChanged, Now, cancellationToken);
        return [];
    }

    /// <summary>Sets a new password, which ends the sessions begun with the old one; what was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> SetPasswordAsync(string name, string password, CancellationToken cancellationToken)
    {
        if (await accounts.FindAsync(name.Trim(), cancellationToken) is not { } account)
            return [await UnknownAsync(name, cancellationToken)];
        if (await accounts.SetPasswordAsync(account, password) is { Count: > 0 } refusals)
            return refusals;
        await doors.CloseAsync(account.Name, DoorsClosed.PasswordChanged, Now, cancellationToken);
        return [];
    }

    /// <summary>Removes somebody; what they entered stays. What was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> RemoveAsync(string name, CancellationToken cancellationToken)
    {
        if (await accounts.FindAsync(name.Trim(), cancellationToken) is not { } account)
            return [await UnknownAsync(name, cancellationToken)];
        if (await IsLastAdultAsync(account, cancellationToken))
            return [new Refusal("name", account.Name, "the last adult stays: add another first")];
        await doors.CloseAsync(account.Name, DoorsClosed.Removed, Now, cancellationToken);
        return await accounts.RemoveAsync(account);
    }

    private async Task<bool> IsLastAdultAsync(KnownAccount account, CancellationToken cancellationToken) =>
        account.Role == MemberRole.Adult && (await accounts.AllAsync(cancellationToken)).Count(member => member.Role == MemberRole.Adult) == 1;

    private async Task<Refusal> UnknownAsync(string name, CancellationToken cancellationToken)
    {
        string[] known = [.. (await accounts.AllAsync(cancellationToken)).Select(member => member.Name)];
        string right = NearestName.Of(name, known) is { } nearest ? $"did you mean {nearest}?"
            : known.Length > 0 ? $"one of {string.Join(", ", known)} would be right" : "nobody can sign in yet";
        return new Refusal("name", name, right);
    }
}
