using FermentWatch.Kitchen.Members;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Members;

/// <summary>Begins, knows and ends sign-ins. How one is carried from request to request is the door's.</summary>
public sealed class KeepSignedIn(ISignInBook signIns, TimeProvider clock)
{
    /// <summary>Signs somebody in whose password was right; null where the account is gone.</summary>
    public async Task<(Guid Id, SignedIn Who)?> BeginAsync(KnownAccount account)
    {
        // Whoever has the right password is signed in, also where the caller does not wait for it.
        Guid id = await signIns.BeginAsync(account.Id, clock.GetUtcNow().ToInstant(), CancellationToken.None);
        return await WhoAsync(id, CancellationToken.None) is { } who ? (id, who) : null;
    }

    /// <summary>Who is signed in by an id, as the records have it now; null where that sign-in has ended or the account is gone.</summary>
    public Task<SignedIn?> WhoAsync(Guid id, CancellationToken cancellationToken) =>
        signIns.WhoAsync(id, clock.GetUtcNow().ToInstant(), cancellationToken);

    /// <summary>Ends one sign-in.</summary>
    public Task EndAsync(Guid id) => signIns.EndAsync(id, CancellationToken.None);
}
