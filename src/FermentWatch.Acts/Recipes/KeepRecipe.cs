using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Recipes;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Recipes;

/// <summary>Keeps a recipe: typed, or from a file that somebody handed over; removes one.</summary>
[OpenToRecorders]
public sealed class KeepRecipe(IRecipeBook recipes, IHouseholdBook households, TimeProvider clock)
{
    /// <summary>Most recipes of one household: a list that a person reads.</summary>
    public const int MostRecipes = 500;

    /// <summary>Keeps what was typed, under the id of the mark: as a new recipe, or in the place of the one that has it.</summary>
    public async Task<RecipeKept> DoAsync(RecipeForm form, EntryMark mark, CancellationToken cancellationToken)
    {
        MassUnit unit = (await households.ReadAsync(cancellationToken)).MassUnit;
        (string name, Mixture? mixture, IReadOnlyList<Refusal> refusals) = RecipeReading.Read(form, unit);
        return await KeepAsync(name, mixture, refusals, form.ItIsRight, mark, cancellationToken);
    }

    /// <summary>Keeps what a file says, likewise; <paramref name="itIsRight"/> says that what looks odd in it is right.</summary>
    public async Task<RecipeKept> TakeInAsync(ReadOnlyMemory<byte> file, bool itIsRight, EntryMark mark, CancellationToken cancellationToken)
    {
        (string name, Mixture? mixture, IReadOnlyList<Refusal> refusals) = RecipeFile.Read(file);
        return await KeepAsync(name, mixture, refusals, itIsRight, mark, cancellationToken);
    }

    /// <summary>Removes a recipe; false where there is none.</summary>
    public Task<bool> RemoveAsync(Guid id, CancellationToken cancellationToken) => recipes.RemoveAsync(id, cancellationToken);

    private async Task<RecipeKept> KeepAsync(string name, Mixture? mixture, IReadOnlyList<Refusal> refusals, bool itIsRight,
        EntryMark mark, CancellationToken cancellationToken)
    {
        if (mixture is null)
            return new RecipeKept(null, refusals);
        IReadOnlyList<HouseholdRecipe> known = await recipes.AllAsync(cancellationToken);
        if (known.Any(each => each.Id != mark.Id && each.Name.Equals(name, StringComparison.OrdinalIgnoreCase)))
            return new RecipeKept(null, [new Refusal("name", name, "a name that no other recipe has would be right")]);
        if (known.Count >= MostRecipes && known.All(each => each.Id != mark.Id))
            return new RecipeKept(null, [new Refusal("recipe", $"one more than {MostRecipes}", "remove one that is not used any more")]);
        // What stands already was asked about when it was kept.
        Doubt? odd = MixtureRules.Odd(mixture), before = known.FirstOrDefault(each => each.Id == mark.Id) is { } standing
            ? MixtureRules.Odd(standing.Mixture) : null;
        if (!itIsRight && odd is not null && odd != before)
            return new RecipeKept(null, []) { Doubts = [odd] };
        var recipe = new HouseholdRecipe { Id = mark.Id, Name = name, Mixture = mixture, ChangedAt = clock.GetUtcNow().ToInstant(), By = mark.By };
        await recipes.KeepAsync(recipe, cancellationToken);
        return new RecipeKept(recipe, []);
    }
}

/// <summary>What was kept, or what was wrong.</summary>
/// <param name="Recipe">The recipe; null where anything was wrong.</param>
/// <param name="Refusals">What was.</param>
public sealed record RecipeKept(HouseholdRecipe? Recipe, IReadOnlyList<Refusal> Refusals)
{
    /// <summary>What is odd and was not insisted on; then nothing was kept.</summary>
    public IReadOnlyList<Doubt> Doubts { get; init; } = [];
}

/// <summary>Recipes, as they are asked for.</summary>
public sealed class RecipeReader(IRecipeBook recipes, IHouseholdBook households)
{
    /// <summary>All of them, by name.</summary>
    public async Task<(IReadOnlyList<HouseholdRecipe> Recipes, Household Household)> AllAsync(CancellationToken cancellationToken) =>
        (await recipes.AllAsync(cancellationToken), await households.ReadAsync(cancellationToken));

    /// <summary>One of them, for so much as is asked for; null where there is none.</summary>
    public async Task<RecipeAsked?> FindAsync(Guid id, ScaleForm form, CancellationToken cancellationToken)
    {
        (IReadOnlyList<HouseholdRecipe> all, Household household) = await AllAsync(cancellationToken);
        if (all.FirstOrDefault(each => each.Id == id) is not { } recipe)
            return null;
        (ScaledRecipe? scaled, IReadOnlyList<Refusal> refusals) = ScaledRecipe.For(recipe.Mixture, form, household.MassUnit);
        return new RecipeAsked(recipe, household, scaled, refusals);
    }
}

/// <summary>A recipe that was asked for.</summary>
/// <param name="Recipe">As it is kept.</param>
/// <param name="Household">For units.</param>
/// <param name="Scaled">For so much as was asked; null where that could not be read.</param>
/// <param name="Refusals">What was wrong with that.</param>
public sealed record RecipeAsked(HouseholdRecipe Recipe, Household Household, ScaledRecipe? Scaled, IReadOnlyList<Refusal> Refusals);
