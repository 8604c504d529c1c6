using FermentWatch.Acts;
using FermentWatch.Acts.Members;
using FermentWatch.Kinetics;

namespace FermentWatch.Web.Accounts;

/// <summary>Where people change their own password.</summary>
[OpenToChildren]
internal sealed class PasswordDesk(AccountReader accounts, ManageMembers members, PasswordGuard guard, SignIns signIns)
{
    /// <summary>Changes the password of who is signed in and keeps this one browser signed in; what was wrong, or nothing.</summary>
    public async Task<IReadOnlyList<Refusal>> ChangeAsync(HttpContext context, PasswordInput input)
    {
        if (await accounts.FindAsync(context.User.Identity!.Name!, context.RequestAborted) is not { } account)
            return [new Refusal("old password", "nobody", "sign in again first")];
        string from = context.Connection.RemoteIpAddress?.ToString() ?? "nowhere";
        if (input.New != input.Again)
            return [new Refusal("again", "another password", "the same password twice would be right")];
        switch ((await guard.TryAsync(accounts, account.Name, input.Old, from, context.RequestAborted)).Answer)
        {
            case PasswordAnswer.TooMany:
                return [new Refusal("old password", "one try too many at a time", "wait a quarter of a minute, then try again")];
            case PasswordAnswer.Wrong:
                return [new Refusal("old password", "another password", "the one you signed in with would be right")];
        }
        if (await members.SetPasswordAsync(account.Name, input.New ?? "", CancellationToken.None) is { Count: > 0 } refusals)
            return refusals;
        await signIns.BeginAsync(context, account, stay: true);
        return [];
    }
}

/// <summary>A change of one's own password, as typed.</summary>
public sealed class PasswordInput
{
    public string? Old { get; set; }

    public string? New { get; set; }

    public string? Again { get; set; }
}
