using FermentWatch.Kitchen.Recipes;
using NodaTime;

namespace FermentWatch.Web.Api.Answers;

/// <summary>A recipe in the list of all.</summary>
/// <param name="Id">By which it is asked for.</param>
/// <param name="Name">What the household calls it.</param>
/// <param name="Vegetables">Their names.</param>
/// <param name="SaltPercent">Salt, per cent of vegetables and added water together.</param>
/// <param name="Allergens">What is to be made known to whoever eats of it, as far as it was written or names tell.</param>
/// <param name="ChangedAt">When it was kept as it stands.</param>
/// <param name="By">Who kept it.</param>
internal sealed record RecipeListedAnswer(Guid Id, string Name, IReadOnlyList<string> Vegetables, double SaltPercent, IReadOnlyList<string> Allergens,
    Instant ChangedAt, string By)
{
    public static RecipeListedAnswer Of(HouseholdRecipe recipe) => new(recipe.Id, recipe.Name,
        [.. recipe.Mixture.Vegetables.Select(part => part.Name)], recipe.Mixture.Salt.Percent, recipe.Mixture.ToBeMadeKnown, recipe.ChangedAt,
            recipe.By);
}

/// <summary>A recipe as a file: what is read and what is put. The schema is described in README.md.</summary>
/// <param name="Format">Always <c>fermentwatch-recipe/1</c>.</param>
/// <param name="Name">1 to 60 letters.</param>
/// <param name="Vegetables">1 to 10, the one of which it is named first.</param>
/// <param name="Seasonings">Up to 20.</param>
/// <param name="WaterGrams">Water that is added.</param>
/// <param name="WaterSharePercent">The same as a share of all, where parts are said in shares; never written.</param>
/// <param name="VinegarGrams">Vinegar; written where there is any.</param>
/// <param name="VinegarSharePercent">The same as a share of all; never written.</param>
/// <param name="VinegarPercent">Its acetic acid; 5 where nothing is said.</param>
/// <param name="StarterBrineGrams">Brine of an earlier jar; written where there is any.</param>
/// <param name="StarterBrineSharePercent">The same as a share of all; never written.</param>
/// <param name="SaltPercent">Salt, per cent of what <c>salt_of</c> says.</param>
/// <param name="SaltOf"><c>VegetablesAndWater</c>, <c>Vegetables</c> or <c>Brine</c>.</param>
/// <param name="Sourness"><c>ALittleSour</c> to <c>VerySour</c>.</param>
/// <param name="Cut"><c>Shredded</c>, <c>SaltedLeaves</c>, <c>Sliced</c>, <c>Pieces</c> or <c>Whole</c>.</param>
/// <param name="Allergens">Up to 20.</param>
/// <param name="Note">Up to 2,000 letters.</param>
internal sealed record RecipeFileBody(string Format, string Name, IReadOnlyList<RecipePartBody> Vegetables, IReadOnlyList<RecipePartBody>? Seasonings,
    double? WaterGrams, double? WaterSharePercent, double? VinegarGrams, double? VinegarSharePercent, double? VinegarPercent,
    double? StarterBrineGrams, double? StarterBrineSharePercent, double SaltPercent, string? SaltOf, string? Sourness, string? Cut,
        IReadOnlyList<string>? Allergens,
    string? Note);

/// <summary>A part of a recipe.</summary>
/// <param name="Name">1 to 40 letters.</param>
/// <param name="Grams">How much of it; or the share.</param>
/// <param name="SharePercent">Its share of vegetables, seasonings and water together, where all parts are said in shares; never written.</param>
/// <param name="Note">How it is prepared, up to 200 letters.</param>
internal sealed record RecipePartBody(string Name, double? Grams, double? SharePercent, string? Note);

/// <summary>A recipe for so many jars.</summary>
/// <param name="JarCount">How many.</param>
/// <param name="VesselLitres">Their size; null where nobody said.</param>
/// <param name="EachVegetables">Vegetables in each.</param>
/// <param name="EachSeasonings">Seasonings in each.</param>
/// <param name="EachWaterGrams">Water in each.</param>
/// <param name="EachVinegarGrams">Vinegar in each.</param>
/// <param name="VinegarPercent">Its acetic acid, per cent.</param>
/// <param name="EachStarterBrineGrams">Brine of an earlier jar in each.</param>
/// <param name="EachSaltGrams">Salt in each.</param>
/// <param name="AllGrams">All jars together, without the salt.</param>
/// <param name="AllSaltGrams">Salt for all.</param>
/// <param name="SaltPercent">Salt, per cent of vegetables and added water together.</param>
internal sealed record ScaledRecipeAnswer(int JarCount, double? VesselLitres, IReadOnlyList<RecipePartBody> EachVegetables,
    IReadOnlyList<RecipePartBody> EachSeasonings, double EachWaterGrams, double EachVinegarGrams, double VinegarPercent,
    double EachStarterBrineGrams, double EachSaltGrams, double AllGrams, double AllSaltGrams,
    double SaltPercent)
{
    public static ScaledRecipeAnswer Of(ScaledRecipe scaled) => new(scaled.Count, scaled.VesselLitres, Parts(scaled.Each.Vegetables),
        Parts(scaled.Each.Seasonings), scaled.Each.WaterGrams, scaled.Each.VinegarGrams, scaled.Each.VinegarPercent, scaled.Each.StarterGrams,
        scaled.Each.Salt.Grams, scaled.All.TotalGrams, scaled.All.Salt.Grams,
        scaled.Each.Salt.Percent);

    private static RecipePartBody[] Parts(IReadOnlyList<MixturePart> parts) =>
        [.. parts.Select(part => new RecipePartBody(part.Name, part.Grams, null, part.Note))];
}
