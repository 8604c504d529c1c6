using FermentWatch.Kitchen.Health;
using FermentWatch.Web.Accounts;
using FermentWatch.Web.Api;
using FermentWatch.Web.Gates;
using FermentWatch.Web.Pages.Layout;
using FermentWatch.Web.Pages.Photos;
using FermentWatch.Web.Pages.Rounds;
using FermentWatch.Web.Pages.Sensors;
using FermentWatch.Web.Pages.Shared;
using FermentWatch.Web.Pages.Unsent;

namespace FermentWatch.Web;

/// <summary>The door of pages, API and accounts for the composition root.</summary>
public static class WebServices
{
    /// <summary>
    /// Registers pages, API and accounts. Needs the books of Storage, a <see cref="TimeProvider"/> and the service's loops beside it.
    /// </summary>
    public static IServiceCollection AddFermentWatchWeb(this IServiceCollection services)
    {
        services.AddRazorComponents();
        services.AddCascadingAuthenticationState();
        services.AddAntiforgery(options =>
        {
            options.Cookie.Name = "fermentwatch-form";
            options.Cookie.SameSite = SameSiteMode.Strict;
            options.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        });
        services.AddAccounts().AddApi();
        services.AddHttpContextAccessor();
        services.AddSingleton<PhotoDesk>();
        services.AddSingleton<PagesInTurn>();
        services.AddScoped<TypedBefore>();
        services.AddScoped<SignInDesk>().AddScoped<SetUpDesk>().AddScoped<PasswordDesk>();
        return services;
    }

    /// <summary>Puts the pages, the API and the sign of life in the way of a request.</summary>
    public static WebApplication MapFermentWatchWeb(this WebApplication app)
    {
        app.UseProxies(app.Services.GetRequiredService<WebOptions>());
        app.Use(SecurityHeaders.Set);
        Func<Exception?, int> statusOf = TroubleAnswer.StatusOf(app.Services.GetRequiredService<IDiskTrouble>());
        app.UseExceptionHandler(new ExceptionHandlerOptions
        {
            ExceptionHandler = TroubleAnswer.WriteAsync, StatusCodeSelector = statusOf,
            SuppressDiagnosticsCallback = failed => statusOf(failed.Exception) != StatusCodes.Status500InternalServerError,
        });
        app.UseWhen(context => AccountServices.IsApi(context.Request), api => api.UseResponseCompression());
        app.UseWhen(IsForScripts, scripts => scripts.UseStatusCodePages());
        app.UseWhen(context => !IsForScripts(context), people =>
            people.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true));
        app.UseStaticFiles(new StaticFileOptions { FileProvider = BuiltInFiles.Provider, OnPrepareResponse = KeepForEver });
        app.Use(next => context => app.Services.GetRequiredService<PagesInTurn>().PassAsync(context, next));
        app.UseRouting();
        app.UseAuthentication();
        app.UseAuthorization();
        app.Use(PersonHeader.Set);
        app.Use(ForgeryGate.PassCallAsync);
        app.Use(KeptEntries.PassAsync);
        app.Use(ChildGate.PassAsync);
        app.Use(ScriptGate.PassAsync);
        app.UseAntiforgery();
        app.Use(ForgeryGate.PassFormAsync);
        app.Use(DoneAlready.LeadAsync);
        app.MapHealth();
        app.MapExportForm();
        app.MapPost("/sign-out", SignOutAsync).Does<SignInDesk>().ExcludeFromDescription();
        app.MapBoardTap();
        app.MapUnsent();
        app.MapAppIcon();
        app.MapOfferTap();
        app.MapFirstReading();
        app.MapApi();
        app.MapPhotos();
        app.MapRazorComponents<App>();
        return app;
    }

    private static bool IsForScripts(HttpContext context) =>
        AccountServices.IsApi(context.Request) || KeptEntries.Is(context.Request);

    private static async Task<IResult> SignOutAsync([Microsoft.AspNetCore.Mvc.FromForm] SignOutForm _, SignInDesk desk)
    {
        await desk.SignOutAsync();
        return Results.Redirect("~/sign-in");
    }

    /// <summary>What bears a print of its content is kept for ever; the worker and the manifest stay at one address, and are asked for
    /// again.</summary>
    private static void KeepForEver(Microsoft.AspNetCore.StaticFiles.StaticFileResponseContext file) =>
        file.Context.Response.Headers.CacheControl = file.Context.Request.Query.ContainsKey("v") ? "public, max-age=31536000, immutable" : "no-cache";
}
