using System.Globalization;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.OpenApi;

namespace FermentWatch.Web.Api;

/// <summary>What the description of the API (OpenAPI 3.1) says beyond the endpoints: its name, how one signs in, and a name for each call.</summary>
internal static class ApiDescription
{
    private const string Key = "key", Cookie = "cookie";

    public static void Describe(OpenApiOptions options)
    {
        options.AddDocumentTransformer((document, _, _) =>
        {
            document.Info = new OpenApiInfo
            {
                Title = "FermentWatch", Version = "v1",
                Description = "Jars that ferment, what was seen and measured of them, and what is expected. Nothing here is a verdict on food: "
                    + "local food-safety guidance comes first. Units stand in the names; what is added later is added, never renamed.",
                License = new OpenApiLicense { Name = "MIT", Identifier = "MIT" },
            };
            // The address is the household's own, and another in each.
            document.Servers = [new OpenApiServer { Url = "/" }];
            document.Components ??= new OpenApiComponents();
            document.Components.SecuritySchemes = new Dictionary<string, IOpenApiSecurityScheme>
            {
                [Key] = new OpenApiSecurityScheme
                {
                    Type = SecuritySchemeType.Http, Scheme = "bearer",
                    Description = "A key for scripts, made on the household's page; it may read, record or manage.",
                },
                [Cookie] = new OpenApiSecurityScheme
                {
                    Type = SecuritySchemeType.ApiKey, In = ParameterLocation.Cookie, Name = "fermentwatch",
                    Description = "The cookie of a sign-in; writes carry the header 'X-FermentWatch: 1' beside it.",
                },
            };
            document.Security = [Requirement(document, Key), Requirement(document, Cookie)];
            return Task.CompletedTask;
        });
        options.AddOperationTransformer((operation, context, _) =>
        {
            operation.OperationId = NameOf(context.Description.HttpMethod!, context.Description.RelativePath!);
            if (context.Description.ActionDescriptor.EndpointMetadata.OfType<Microsoft.AspNetCore.Authorization.IAllowAnonymous>().Any())
                operation.Security = [];
            return Task.CompletedTask;
        });
    }

    /// <summary>A name from method and path, such as getJarsNumberForecast: it stays for as long as the path does.</summary>
    private static string NameOf(string method, string path)
    {
        string[] words = path.Split(['/', '-', '_', '{', '}', ':', '.'], StringSplitOptions.RemoveEmptyEntries);
        return method.ToLowerInvariant() + string.Concat(words.Where(word => word is not ("api" or "v1" or "int" or "guid"))
            .Select(word => string.Create(CultureInfo.InvariantCulture, $"{char.ToUpperInvariant(word[0])}{word[1..]}")));
    }

    private static OpenApiSecurityRequirement Requirement(OpenApiDocument document, string scheme) =>
        new() { [new OpenApiSecuritySchemeReference(scheme, document)] = [] };
}
