using System.Security.Claims;
using FermentWatch.Acts.Recipes;
using FermentWatch.Kitchen.Recipes;
using FermentWatch.Web.Accounts;
using FermentWatch.Web.Api.Answers;
using FermentWatch.Web.Gates;
using Microsoft.AspNetCore.Mvc;

namespace FermentWatch.Web.Api;

/// <summary>Recipes: listed, read and put as files, scaled, removed.</summary>
internal static class RecipeEndpoints
{
    private const string Json = "application/json";

    public static void MapRecipes(this RouteGroupBuilder api)
    {
        RouteGroupBuilder recipes = api.MapGroup("/recipes").WithTags("recipes");
        recipes.MapGet("/", AllAsync).WithSummary("Every recipe, by name.").Produces<RecipeListedAnswer[]>();
        recipes.MapGet("/{id:guid}", FileAsync).WithSummary("A recipe as a file; with download=true to be saved.")
            .Produces<RecipeFileBody>().ProducesProblem(404);
        recipes.MapGet("/{id:guid}/scaled", ScaledAsync)
            .WithSummary("A recipe for a mass, a number of jars or a size of vessel, each as it is typed: mass=4 kg, jars=6, vessel=1 l.")
            .Produces<ScaledRecipeAnswer>().ProducesValidationProblem(422).ProducesProblem(404);
        recipes.MapPut("/{id:guid}", PutAsync).Does<KeepRecipe>().Accepts<RecipeFileBody>(Json)
            .WithMetadata(new RequestSizeLimitAttribute(2 * RecipeFile.LongestBytes))
            .WithSummary("Keeps a recipe under an id: a new one, or in the place of the one that has it; it_is_right=true where odd salt is meant.")
            .Produces<RecipeFileBody>().ProducesValidationProblem(422);
        recipes.MapDelete("/{id:guid}", RemoveAsync).Does<KeepRecipe>().WithSummary("Removes a recipe; jars put up by it stay.")
            .Produces(204).ProducesProblem(404);
    }

    private static async Task<IResult> AllAsync(RecipeReader reader, CancellationToken cancellationToken) =>
        Results.Ok((await reader.AllAsync(cancellationToken)).Recipes.Select(RecipeListedAnswer.Of));

    private static async Task<IResult> FileAsync(Guid id, [FromQuery(Name = "download")] bool? download, RecipeReader reader,
        CancellationToken cancellationToken)
    {
        if (await reader.FindAsync(id, new ScaleForm(), cancellationToken) is not { Recipe: { } recipe })
            return NoRecipe(id);
        return Results.Bytes(RecipeFile.Write(recipe.Name, recipe.Mixture), Json, download == true ? FileName(recipe.Name) : null);
    }

    private static async Task<IResult> ScaledAsync(Guid id, [FromQuery(Name = "mass")] string? mass, [FromQuery(Name = "jars")] string? jars,
        [FromQuery(Name = "vessel")] string? vessel, RecipeReader reader, CancellationToken cancellationToken) =>
        await reader.FindAsync(id, new ScaleForm { Mass = mass, Jars = jars, Vessel = vessel }, cancellationToken) switch
        {
            null => NoRecipe(id),
            { Scaled: { } scaled } => Results.Ok(ScaledRecipeAnswer.Of(scaled)),
            var asked => RefusalProblem.Of(asked.Refusals),
        };

    private static async Task<IResult> PutAsync(Guid id, [FromQuery(Name = "it_is_right")] bool? itIsRight, HttpRequest request,
        ClaimsPrincipal person, KeepRecipe act, CancellationToken cancellationToken)
    {
        byte[] file = await UpToAsync(request.Body, RecipeFile.LongestBytes + 1, cancellationToken);
        RecipeKept kept = await act.TakeInAsync(file, itIsRight == true, person.Mark(id), cancellationToken);
        return kept.Recipe is { } recipe ? Results.Bytes(RecipeFile.Write(recipe.Name, recipe.Mixture), Json)
            : RefusalProblem.Of(kept.Refusals, kept.Doubts);
    }

    private static async Task<IResult> RemoveAsync(Guid id, KeepRecipe act, CancellationToken cancellationToken) =>
        await act.RemoveAsync(id, cancellationToken) ? Results.NoContent() : NoRecipe(id);

    /// <summary>As much of a body as is asked for, which is one more than is taken.</summary>
    internal static async Task<byte[]> UpToAsync(Stream body, int most, CancellationToken cancellationToken)
    {
        byte[] buffer = new byte[most];
        int read = await body.ReadAtLeastAsync(buffer, most, throwOnEndOfStream: false, cancellationToken);
        return buffer[..read];
    }

    private static string FileName(string name)
    {
        string plain = string.Concat(name.Where(letter => char.IsAsciiLetterOrDigit(letter) || letter is ' ' or '-')).Trim().Replace(' ', '-');
        return $"{(plain.Length == 0 ? "recipe" : plain)}.recipe.json";
    }

    private static IResult NoRecipe(Guid id) => RefusalProblem.NotThere($"recipe {id}");
}
