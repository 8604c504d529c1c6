using FermentWatch.Kitchen.Recipes;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IRecipeBook"/>
internal sealed class RecipeBook(IDbContextFactory<RecordsContext> contexts) : IRecipeBook
{
    public async Task<IReadOnlyList<HouseholdRecipe>> AllAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        // A row whose mixture cannot be read any more stays in the table and out of the list.
        return [.. (await context.Recipes.AsNoTracking().OrderBy(recipe => recipe.Name).ToListAsync(cancellationToken))
            .Where(recipe => recipe.Mixture.Vegetables.Count > 0)];
    }

    /// <exception cref="NameTakenException">Another recipe has the name.</exception>
    public async Task KeepAsync(HouseholdRecipe recipe, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        bool isThere = await context.Recipes.AnyAsync(each => each.Id == recipe.Id, cancellationToken);
        context.Entry(recipe).State = isThere ? EntityState.Modified : EntityState.Added;
        await context.SaveNamedAsync("recipe", recipe.Name, cancellationToken);
        await transaction.CommitAsync(cancellationToken);
    }

    public async Task<bool> RemoveAsync(Guid id, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await context.Recipes.Where(recipe => recipe.Id == id).ExecuteDeleteAsync(cancellationToken) > 0;
    }
}
