using FermentWatch.Kitchen.Households;
using NodaTime;

namespace FermentWatch.Kitchen.Members;

/// <summary>The record of who is signed in where, and of the doors that stand open to a person without signing in.</summary>
public interface ISignInBook
{
    /// <summary>Notes that somebody signed in; the id goes into the cookie.</summary>
    Task<Guid> BeginAsync(Guid accountId, Instant now, CancellationToken cancellationToken);

    /// <summary>Who is signed in by an id, as the records have it now; null where that sign-in has ended or the account is gone.</summary>
    Task<SignedIn?> WhoAsync(Guid signInId, Instant now, CancellationToken cancellationToken);

    /// <summary>Ends one sign-in.</summary>
    Task EndAsync(Guid signInId, CancellationToken cancellationToken);

    /// <summary>
    /// Ends every sign-in of a person and every key this person made for a script, the calendar's address, the links in messages sent so far
    /// and the browsers that are told by push; of somebody who leaves or is made a child also every other way to be told, and the links for guests.
    /// </summary>
    Task CloseAsync(string person, DoorsClosed why, Instant now, CancellationToken cancellationToken);
}

/// <summary>Somebody who is signed in.</summary>
/// <param name="AccountId">The account.</param>
/// <param name="Stamp">Its security stamp.</param>
/// <param name="Name">The name the household uses.</param>
/// <param name="Role">What this person may do; a child where nothing is on record.</param>
public sealed record SignedIn(Guid AccountId, string Stamp, string Name, MemberRole Role);

/// <summary>Why a person's doors are closed.</summary>
public enum DoorsClosed
{
    /// <summary>The password is another: whoever knew the old one is out.</summary>
    PasswordChanged = 1,

    /// <summary>An adult is a child from now on, or the other way round.</summary>
    RoleChanged = 2,

    /// <summary>The person does not belong to the household any more.</summary>
    Removed = 3,
}
