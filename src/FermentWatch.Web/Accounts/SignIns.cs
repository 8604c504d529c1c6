using System.Security.Claims;
using FermentWatch.Acts.Members;
using FermentWatch.Kitchen.Members;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;

namespace FermentWatch.Web.Accounts;

/// <summary>
/// Sign-ins: each is a row of the records whose id stands in the cookie. At every request the cookie is held against the row, so that
/// whoever signed out, was removed, became a child or has another password is that from the next request on.
/// </summary>
public sealed class SignIns(KeepSignedIn keep)
{
    /// <summary>The cookie's scheme. It stands in what seals the cookie: another name would sign everybody out.</summary>
    public const string Scheme = "Identity.Application";

    private const string IdClaim = "sign-in", StampClaim = "AspNet.Identity.SecurityStamp";

    /// <summary>Signs somebody in whose password was right.</summary>
    /// <param name="context">The request that is answered with the cookie.</param>
    /// <param name="account">The account.</param>
    /// <param name="stay">Whether the sign-in outlives the browser's session.</param>
    public async Task BeginAsync(HttpContext context, KnownAccount account, bool stay)
    {
        if (await keep.BeginAsync(account) is var (id, who))
            await context.SignInAsync(Scheme, new ClaimsPrincipal(Identity(id, who)), new AuthenticationProperties { IsPersistent = stay });
    }

    /// <summary>Ends the sign-in of a request: the cookie is worth nothing any more, wherever it was copied to.</summary>
    public async Task EndAsync(HttpContext context)
    {
        if (IdOf(context.User) is { } id)
            await keep.EndAsync(id);
        await context.SignOutAsync(Scheme);
    }

    /// <summary>Holds a cookie against the records and gives its bearer the name and the role that stand there.</summary>
    public static async Task CheckAsync(CookieValidatePrincipalContext context)
    {
        IServiceProvider services = context.HttpContext.RequestServices;
        Guid? id = context.Principal is { } bearer ? IdOf(bearer) : null;
        SignedIn? who = id is { } signIn
            ? await services.GetRequiredService<KeepSignedIn>().WhoAsync(signIn, context.HttpContext.RequestAborted) : null;
        if (who is null || who.Stamp != context.Principal!.FindFirstValue(StampClaim))
            context.RejectPrincipal();
        else
            context.ReplacePrincipal(new ClaimsPrincipal(Identity(id!.Value, who)));
    }

    /// <summary>What a request says of who stands behind it.</summary>
    internal static Claim[] ClaimsOf(SignedIn who) =>
    [
        new(ClaimTypes.NameIdentifier, who.AccountId.ToString()), new(ClaimTypes.Name, who.Name), new(ClaimTypes.Role, who.Role.ToString()),
    ];

    private static ClaimsIdentity Identity(Guid signIn, SignedIn who) =>
        new([.. ClaimsOf(who), new Claim(StampClaim, who.Stamp), new Claim(IdClaim, signIn.ToString("N"))], Scheme, ClaimTypes.Name,
            ClaimTypes.Role);

    private static Guid? IdOf(ClaimsPrincipal person) => Guid.TryParse(person.FindFirstValue(IdClaim), out Guid id) ? id : null;
}
