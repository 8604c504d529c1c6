using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Acts.Members;

/// <summary>Reads who may sign in.</summary>
public sealed class AccountReader(IAccountBook accounts)
{
    private const int MostLetters = 256;

    /// <summary>Whether anybody may; until then the kitchen is not set up.</summary>
    public Task<bool> AnybodyAsync(CancellationToken cancellationToken) => accounts.AnybodyAsync(cancellationToken);

    /// <summary>Whoever has this name, whatever the case; null where nobody has.</summary>
    public Task<KnownAccount?> FindAsync(string name, CancellationToken cancellationToken) => accounts.FindAsync(name, cancellationToken);

    /// <summary>
    /// Whoever has this name and this password; null where they do not belong together. A name or a password too long to be one is looked
    /// for as none, at the same cost.
    /// </summary>
    public Task<KnownAccount?> WithPasswordAsync(string name, string password, CancellationToken cancellationToken) =>
        accounts.WithPasswordAsync(name.Length > SafeText.LongestName ? "" : name, password.Length > MostLetters ? "" : password, cancellationToken);
}
