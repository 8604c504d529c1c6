using System.Net.Http.Headers;
using System.Security.Claims;
using System.Text.Encodings.Web;
using FermentWatch.Acts.Members;
using FermentWatch.Kitchen.Members;
using Microsoft.AspNetCore.Authentication;
using Microsoft.Extensions.Options;

namespace FermentWatch.Web.Accounts;

/// <summary>Knows a script by the key it sends: <c>Authorization: Bearer fwkey_...</c> (RFC 6750, section 2.1). For the API alone: a key opens
/// no page.</summary>
internal sealed class ScriptKeys(IOptionsMonitor<AuthenticationSchemeOptions> options, ILoggerFactory logger, UrlEncoder encoder,
    IssueScriptKey keys) : AuthenticationHandler<AuthenticationSchemeOptions>(options, logger, encoder)
{
    public const string Named = "script-key";

    private const string Bearer = "Bearer", ScopeClaim = "scope";

    /// <summary>Whether a request brings a key, right or wrong, where one opens a door.</summary>
    public static bool AreBrought(HttpContext context) => AccountServices.IsApi(context.Request) && SecretOf(context.Request) is not null;

    /// <summary>How far a caller may go; null of one who is no script.</summary>
    public static ScriptScope? ScopeOf(ClaimsPrincipal caller) =>
        caller.FindFirstValue(ScopeClaim) is { } scope ? Enum.Parse<ScriptScope>(scope) : null;

    protected override async Task<AuthenticateResult> HandleAuthenticateAsync()
    {
        if (await keys.FindAsync(SecretOf(Request) ?? "", Context.RequestAborted) is not var (key, who))
            return AuthenticateResult.Fail("There is no such key.");
        var identity = new ClaimsIdentity([.. SignIns.ClaimsOf(who), new Claim(ScopeClaim, key.Scope.ToString())], Named, ClaimTypes.Name,
            ClaimTypes.Role);
        return AuthenticateResult.Success(new AuthenticationTicket(new ClaimsPrincipal(identity), Named));
    }

    private static string? SecretOf(HttpRequest request) =>
        AuthenticationHeaderValue.TryParse(request.Headers.Authorization, out AuthenticationHeaderValue? sent)
            && sent.Scheme.Equals(Bearer, StringComparison.OrdinalIgnoreCase) ? sent.Parameter ?? "" : null;

    protected override Task HandleChallengeAsync(AuthenticationProperties properties)
    {
        Response.Headers.WWWAuthenticate = "Bearer error=\"invalid_token\"";
        return Results.Problem(title: "This key opens nothing: it was withdrawn, or is not whole. A new one is made on the household's page.",
            statusCode: StatusCodes.Status401Unauthorized).ExecuteAsync(Context);
    }
}
