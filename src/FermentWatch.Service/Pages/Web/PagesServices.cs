using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Service.Accounts;
using FermentWatch.Service.Api;
using FermentWatch.Service.CommandLine.Members;
using FermentWatch.Service.Health;
using FermentWatch.Service.Pages.Away;
using FermentWatch.Service.Pages.Answers;
using FermentWatch.Service.Pages.Entering;
using FermentWatch.Service.Pages.Home;
using FermentWatch.Service.Pages.Jars;
using FermentWatch.Service.Pages.Notices;
using FermentWatch.Service.Pages.Photos;
using FermentWatch.Service.Pages.Layout;
using FermentWatch.Service.Pages.Rounds;
using FermentWatch.Service.Pages.Sensors;
using FermentWatch.Service.Pages.Shared;
using FermentWatch.Service.Settings;
using Microsoft.AspNetCore.Authorization;

namespace FermentWatch.Service.Pages.Web;

/// <summary>The door of pages, API and accounts for the composition root.</summary>
public static class PagesServices
{
    /// <summary>
    /// Registers pages, API and accounts. Needs the books of Storage, a <see cref="TimeProvider"/> and the service's loops beside it.
    /// </summary>
    public static IServiceCollection AddFermentWatchPages(this IServiceCollection services)
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
        services.AddSingleton<HealthReader>().AddHostedService<Watchdog>();
        services.AddSingleton<JarReader>().AddSingleton<SensorReader>().AddSingleton<RoundReader>();
        services.AddSingleton<ForecastRenewal>().AddSingleton<ReadyPlaces>().AddSingleton<ReadyStarters>().AddSingleton<JarDesk>().AddSingleton<RoundDesk>().AddSingleton<HomeDesk>();
        services.AddSingleton<NoticeDesk>().AddSingleton<AnswerDesk>().AddSingleton<FeedDesk>().AddSingleton<PhoneDesk>();
        services.AddSingleton<SensorDesk>().AddSingleton<RuleDesk>().AddSingleton<OfferDesk>().AddSingleton<CalibrationDesk>().AddSingleton<CredentialDesk>();
        services.AddSingleton<DutyDesk>().AddSingleton<GuestDesk>().AddSingleton<AwayDesk>().AddSingleton<PhotoDesk>();
        services.AddSingleton<PagesInTurn>();
        services.AddSingleton<OncePerForm<PutUpOrder>>();
        services.AddScoped<TypedBefore>();
        services.AddScoped<SignInDesk>().AddScoped<SetUpDesk>().AddScoped<MemberDesk>().AddScoped<PasswordDesk>();
        return services;
    }

    /// <summary>Puts the pages, the API and the sign of life in the way of a request.</summary>
    public static WebApplication MapFermentWatchPages(this WebApplication app)
    {
        app.UseProxies(app.Services.GetRequiredService<WebOptions>());
        app.Use(SecurityHeaders.Set);
        app.UseExceptionHandler(new ExceptionHandlerOptions
        {
            ExceptionHandler = TroubleAnswer.WriteAsync, StatusCodeSelector = TroubleAnswer.StatusOf,
            SuppressDiagnosticsCallback = failed => TroubleAnswer.StatusOf(failed.Exception) != StatusCodes.Status500InternalServerError,
        });
        app.UseWhen(IsForScripts, scripts => scripts.UseStatusCodePages());
        app.UseWhen(context => !IsForScripts(context), people => people.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true));
        app.UseStaticFiles(new StaticFileOptions { FileProvider = BuiltInFiles.Provider, OnPrepareResponse = KeepForEver });
        app.Use(next => context => app.Services.GetRequiredService<PagesInTurn>().PassAsync(context, next));
        app.UseRouting();
        app.UseAuthentication();
        app.UseAuthorization();
        app.Use(ForgeryGate.PassCallAsync);
        app.Use(ChildGate.PassAsync);
        app.UseAntiforgery();
        app.Use(ForgeryGate.PassFormAsync);
        app.Use(DoneAlready.LeadAsync);
        app.MapHealth();
        app.MapPost("/sign-out", SignOutAsync).ExcludeFromDescription();
        app.MapOfferTap();
        app.MapApi();
        app.MapPhotos();
        app.MapRazorComponents<App>();
        return app;
    }

    private static bool IsForScripts(HttpContext context) =>
        context.Request.Path.StartsWithSegments("/api") || context.Request.Path.StartsWithSegments("/openapi");

    private static async Task<IResult> SignOutAsync([Microsoft.AspNetCore.Mvc.FromForm] SignOutForm _, SignInDesk desk)
    {
        await desk.SignOutAsync();
        return Results.Redirect("~/sign-in");
    }

    /// <summary>The worker stays at one address, so that a browser must ask for it again.</summary>
    private static void KeepForEver(Microsoft.AspNetCore.StaticFiles.StaticFileResponseContext file) =>
        file.Context.Response.Headers.CacheControl = file.Context.Request.Path == PushWorker.Path ? "no-cache" : "public, max-age=31536000, immutable";
}
