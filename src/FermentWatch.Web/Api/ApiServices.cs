using System.Text.Json;
using System.Text.Json.Serialization;
using FermentWatch.Web.Accounts;
using NodaTime;
using NodaTime.Serialization.SystemTextJson;

namespace FermentWatch.Web.Api;

/// <summary>The API for scripts: JSON under /api/v1, described at /openapi/v1.json.</summary>
internal static class ApiServices
{
    public static IServiceCollection AddApi(this IServiceCollection services)
    {
        services.ConfigureHttpJsonOptions(options =>
        {
            options.SerializerOptions.PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower;
            options.SerializerOptions.Converters.Add(new JsonStringEnumConverter(namingPolicy: null, allowIntegerValues: false));
            options.SerializerOptions.UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow;
            options.SerializerOptions.ConfigureForNodaTime(DateTimeZoneProviders.Tzdb);
        });
        // Left to itself the framework answers what it cannot read with a status and no word.
        services.Configure<RouteHandlerOptions>(options => options.ThrowOnBadRequest = true);
        services.AddProblemDetails();
        services.AddOpenApi("v1", ApiDescription.Describe);
        services.AddResponseCompression(options =>
        {
            // Answers of the API hold no token of a form that could be guessed by its length, as pages do.
            options.EnableForHttps = true;
            options.MimeTypes = ["application/json", "application/problem+json", "text/csv"];
        });
        return services;
    }

    public static void MapApi(this WebApplication app)
    {
        app.MapOpenApi("/openapi/{documentName}.json");
        RouteGroupBuilder api = app.MapGroup("/api/v1");
        api.MapPost("/sign-in", SignInAsync).WithTags("accounts").WithSummary("Signs in; the answer sets a cookie.")
            .Produces(204).ProducesProblem(401).ProducesProblem(429).AllowAnonymous();
        api.MapJars();
        api.MapRecipes();
        api.MapPlan();
        api.MapHousehold();
        api.MapExport();
        api.MapSensors();
        api.MapHistory();
        api.MapSources();
        api.MapGateways();
        api.MapRound();
        api.MapNotices();
        api.MapForwarding();
        api.MapOccasions();
        api.MapAnswers();
        api.MapCalendarAddress();
        app.MapCalendar();
    }

    private static async Task<IResult> SignInAsync(SignInForm form, SignInDesk desk) =>
        await desk.SignInAsync(form, stay: false) is { } trouble ? Results.Problem(title: trouble.Words, statusCode: trouble.Status)
            : Results.NoContent();
}
