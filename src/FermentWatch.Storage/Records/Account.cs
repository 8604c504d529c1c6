using Microsoft.AspNetCore.Identity;
using NodaTime;

namespace FermentWatch.Storage.Records;

/// <summary>Somebody who may sign in.</summary>
public sealed class Account : IdentityUser<Guid>
{
    /// <summary>The name the household uses, as it stands beside what this person entered.</summary>
    public required string DisplayName { get; set; }

    /// <summary>Links in messages due up to then open nothing any more; null where none were closed.</summary>
    public Instant? DoorsClosedAt { get; set; }
}
