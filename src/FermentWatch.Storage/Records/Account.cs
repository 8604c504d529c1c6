using Microsoft.AspNetCore.Identity;

namespace FermentWatch.Storage.Records;

/// <summary>Somebody who may sign in.</summary>
public sealed class Account : IdentityUser<Guid>
{
    /// <summary>The name the household uses, as it stands beside what this person entered.</summary>
    public required string DisplayName { get; set; }
}
