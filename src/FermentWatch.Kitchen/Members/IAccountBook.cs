using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;

namespace FermentWatch.Kitchen.Members;

/// <summary>Who may sign in, and with which password. Passwords are kept as hashes, and none is ever given out.</summary>
public interface IAccountBook
{
    /// <summary>Whether anybody has a password.</summary>
    Task<bool> AnybodyAsync(CancellationToken cancellationToken);

    /// <summary>Everybody who may sign in, by name.</summary>
    Task<IReadOnlyList<KnownAccount>> AllAsync(CancellationToken cancellationToken);

    /// <summary>Whoever has this name, whatever the case; null where nobody has.</summary>
    Task<KnownAccount?> FindAsync(string name, CancellationToken cancellationToken);

    /// <summary>
    /// Whoever has this name and this password; null where they do not belong together. Names that are there and names that are not
    /// cost the same work.
    /// </summary>
    Task<KnownAccount?> WithPasswordAsync(string name, string password, CancellationToken cancellationToken);

    /// <summary>Why a password cannot be taken; null where it can.</summary>
    Task<Refusal?> WrongPasswordAsync(string password);

    /// <summary>Adds somebody; what was wrong, or nothing.</summary>
    Task<IReadOnlyList<Refusal>> AddAsync(string name, MemberRole role, string password);

    /// <summary>Makes an adult a child, or the other way round; what was wrong, or nothing.</summary>
    Task<IReadOnlyList<Refusal>> SetRoleAsync(KnownAccount account, MemberRole role);

    /// <summary>Sets another password; what was wrong, or nothing. Whoever signed in by the one before is out.</summary>
    Task<IReadOnlyList<Refusal>> SetPasswordAsync(KnownAccount account, string password);

    /// <summary>Takes somebody's sign-in away; what was wrong, or nothing.</summary>
    Task<IReadOnlyList<Refusal>> RemoveAsync(KnownAccount account);
}

/// <summary>Somebody who may sign in.</summary>
/// <param name="Id">Stands behind this person's sign-ins.</param>
/// <param name="Name">The name to sign in with, which also stands beside what this person entered.</param>
/// <param name="Role">What this person may do; a child where nothing else is on record.</param>
public sealed record KnownAccount(Guid Id, string Name, MemberRole Role);
