using System.Security.Claims;
using FermentWatch.Storage.Records;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;

namespace FermentWatch.Service.Accounts;

/// <summary>Makes the name of a signed-in person the one the household uses.</summary>
internal sealed class DisplayNameClaims(UserManager<Account> accounts, IOptions<IdentityOptions> options)
    : UserClaimsPrincipalFactory<Account>(accounts, options)
{
    protected override async Task<ClaimsIdentity> GenerateClaimsAsync(Account user)
    {
        ClaimsIdentity identity = await base.GenerateClaimsAsync(user);
        if (identity.FindFirst(identity.NameClaimType) is { } name)
            identity.RemoveClaim(name);
        identity.AddClaim(new Claim(identity.NameClaimType, user.DisplayName));
        return identity;
    }
}
