using System.Security.Claims;
using FermentWatch.Kitchen.Members;
using FermentWatch.Storage.Records;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Identity;
using NodaTime.Extensions;

namespace FermentWatch.Service.Accounts;

/// <summary>
/// Sign-ins: each is a row of the records whose id stands in the cookie. At every request the cookie is held against the row, so that
/// whoever signed out, was removed, became a child or has another password is that from the next request on.
/// </summary>
public sealed class SignIns(ISignInBook book, SignInManager<Account> signing, TimeProvider clock)
{
    private const string IdClaim = "sign-in";

    /// <summary>Signs somebody in whose password was right.</summary>
    /// <param name="account">The account.</param>
    /// <param name="stay">Whether the sign-in outlives the browser's session.</param>
    public async Task BeginAsync(Account account, bool stay)
    {
        Guid id = await book.BeginAsync(account.Id, clock.GetUtcNow().ToInstant(), CancellationToken.None);
        await signing.SignInWithClaimsAsync(account, stay, [new Claim(IdClaim, id.ToString("N"))]);
    }

    /// <summary>Ends the sign-in of a request: the cookie is worth nothing any more, wherever it was copied to.</summary>
    public async Task EndAsync(ClaimsPrincipal person)
    {
        if (IdOf(person) is { } id)
            await book.EndAsync(id, CancellationToken.None);
        await signing.SignOutAsync();
    }

    /// <summary>Holds a cookie against the records and gives its bearer the name and the role that stand there.</summary>
    public static async Task CheckAsync(CookieValidatePrincipalContext context)
    {
        IServiceProvider services = context.HttpContext.RequestServices;
        IdentityOptions options = services.GetRequiredService<Microsoft.Extensions.Options.IOptions<IdentityOptions>>().Value;
        string? stamp = context.Principal?.FindFirstValue(options.ClaimsIdentity.SecurityStampClaimType);
        SignedIn? who = context.Principal is { } bearer && IdOf(bearer) is { } id
            ? await services.GetRequiredService<ISignInBook>().WhoAsync(id, services.GetRequiredService<TimeProvider>().GetUtcNow().ToInstant(), context.HttpContext.RequestAborted)
            : null;
        if (who is null || who.Stamp != stamp)
            context.RejectPrincipal();
        else
            context.ReplacePrincipal(new ClaimsPrincipal(Identity(context.Principal!, who, options.ClaimsIdentity)));
    }

    private static ClaimsIdentity Identity(ClaimsPrincipal bearer, SignedIn who, ClaimsIdentityOptions types)
    {
        var identity = new ClaimsIdentity(IdentityConstants.ApplicationScheme, types.UserNameClaimType, types.RoleClaimType);
        identity.AddClaim(new Claim(types.UserIdClaimType, who.AccountId.ToString()));
        identity.AddClaim(new Claim(types.UserNameClaimType, who.Name));
        identity.AddClaim(new Claim(types.RoleClaimType, who.Role.ToString()));
        identity.AddClaim(new Claim(types.SecurityStampClaimType, who.Stamp));
        identity.AddClaim(new Claim(IdClaim, bearer.FindFirstValue(IdClaim)!));
        return identity;
    }

    private static Guid? IdOf(ClaimsPrincipal person) => Guid.TryParse(person.FindFirstValue(IdClaim), out Guid id) ? id : null;
}
