using FermentWatch.Web.Gates;
using FermentWatch.Web.Pages.Shared;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Authorization;

namespace FermentWatch.Web.Accounts;

/// <summary>Who may come in, and how.</summary>
internal static class AccountServices
{
    private static readonly TimeSpan Stay = TimeSpan.FromDays(60);

    /// <summary>Registers the cookie and the rule that everything needs a sign-in unless it says otherwise.</summary>
    public static IServiceCollection AddAccounts(this IServiceCollection services)
    {
        services.AddAuthentication(SignIns.Scheme).AddCookie(SignIns.Scheme, options =>
        {
            options.Cookie.Name = "fermentwatch";
            options.Cookie.HttpOnly = true;
            options.Cookie.SameSite = SameSiteMode.Lax;
            options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
            options.ExpireTimeSpan = Stay;
            // Counted by the browser's own clock: ours may be off on a small machine that just started.
            options.Cookie.MaxAge = Stay;
            options.SlidingExpiration = true;
            options.LoginPath = "/sign-in";
            options.ReturnUrlParameter = "to";
            options.ForwardDefaultSelector = context => ScriptKeys.AreBrought(context) ? ScriptKeys.Named : null;
            (options.ForwardSignIn, options.ForwardSignOut) = (SignIns.Scheme, SignIns.Scheme);
            options.Events.OnValidatePrincipal = SignIns.CheckAsync;
            options.Events.OnRedirectToLogin = AskToSignInAsync;
            options.Events.OnRedirectToAccessDenied = context => Answer(context.Response, StatusCodes.Status403Forbidden, context.RedirectUri);
        }).AddScheme<AuthenticationSchemeOptions, ScriptKeys>(ScriptKeys.Named, null);
        services.AddAuthorizationBuilder().SetFallbackPolicy(new AuthorizationPolicyBuilder().RequireAuthenticatedUser().Build());
        services.AddScoped<SignIns>();
        services.AddSingleton<KeptForms>();
        services.AddSingleton<PasswordGuard>();
        services.AddSingleton<SetUpToken>();
        services.AddHostedService<SetUpNotice>();
        return services;
    }

    /// <summary>A form that comes too late is kept until somebody has signed in.</summary>
    private static async Task AskToSignInAsync(RedirectContext<CookieAuthenticationOptions> context)
    {
        string? kept = IsForScripts(context.Request) ? null
            : await context.HttpContext.RequestServices.GetRequiredService<KeptForms>().KeepAsync(context.Request);
        string signIn = kept is null ? context.RedirectUri : $"{context.RedirectUri}&{TypedBefore.Query}={kept}";
        await Answer(context.Response, StatusCodes.Status401Unauthorized, signIn);
    }

    /// <summary>Whether a request is of the API or of its description.</summary>
    internal static bool IsApi(HttpRequest request) => request.Path.StartsWithSegments("/api") || request.Path.StartsWithSegments("/openapi");

    private static bool IsForScripts(HttpRequest request) => IsApi(request) || KeptEntries.Is(request);

    /// <summary>A script gets the status, a browser the sign-in page.</summary>
    private static Task Answer(HttpResponse response, int status, string signIn)
    {
        if (IsForScripts(response.HttpContext.Request))
            response.StatusCode = status;
        else
            response.Redirect(signIn);
        return Task.CompletedTask;
    }
}
