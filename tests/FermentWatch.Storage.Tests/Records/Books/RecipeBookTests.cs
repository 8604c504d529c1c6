using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Recipes;
using FermentWatch.Storage.Records;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace FermentWatch.Storage.Tests.Records.Books;

public sealed class RecipeBookTests : OpenedRecords
{
    [Fact]
    public async Task KeepAsync_EveryField_IsReadBackAndTheListIsByName()
    {
        HouseholdRecipe kraut = Recipe("kraut"), beets = Recipe("Beets");
        await Book.KeepAsync(kraut, default);
        await Book.KeepAsync(beets, default);
        IReadOnlyList<HouseholdRecipe> all = await Book.AllAsync(default);
        Assert.Equal(["Beets", "kraut"], all.Select(recipe => recipe.Name));
        Assert.Equivalent(kraut, all[1], strict: true);
    }

    [Fact]
    public async Task KeepAsync_UnderAnIdThatIsThere_TakesItsPlace()
    {
        HouseholdRecipe kraut = Recipe("kraut");
        await Book.KeepAsync(kraut, default);
        kraut = new HouseholdRecipe { Id = kraut.Id, Name = "garden kraut", Mixture = kraut.Mixture.Times(2), ChangedAt = kraut.ChangedAt,
            By = "Bo" };
        await Book.KeepAsync(kraut, default);
        Assert.Equivalent(kraut, Assert.Single(await Book.AllAsync(default)), strict: true);
    }

    [Fact]
    public async Task KeepAsync_NameOfAnotherWhateverTheCase_SaysSoAndKeepsBothAsTheyWere()
    {
        await Book.KeepAsync(Recipe("kraut"), default);
        await Assert.ThrowsAsync<NameTakenException>(() => Book.KeepAsync(Recipe("Kraut"), default));
        Assert.Equal("kraut", Assert.Single(await Book.AllAsync(default)).Name);
    }

    [Fact]
    public async Task AllAsync_RowFromBeforeThereWereLiquids_HasNone()
    {
        HouseholdRecipe kraut = Recipe("kraut");
        await Book.KeepAsync(kraut, default);
        await using (var connection = new SqliteConnection($"Data Source={DatabasePath}"))
        {
            await connection.OpenAsync();
            await using SqliteCommand before = connection.CreateCommand();
            before.CommandText = "UPDATE recipe SET Mixture = json_remove(Mixture, '$.VinegarGrams', '$.VinegarPercent', '$.StarterGrams')";
            Assert.Equal(1, await before.ExecuteNonQueryAsync());
        }
        Mixture read = Assert.Single(await Book.AllAsync(default)).Mixture;
        Assert.Equal((0, 5, 0), (read.VinegarGrams, read.VinegarPercent, read.StarterGrams));
        Assert.Equal(kraut.Mixture.SaltedGrams, read.TotalGrams);
    }

    [Fact]
    public async Task RemoveAsync_OnceAndAgain_IsThereAndIsNot()
    {
        HouseholdRecipe kraut = Recipe("kraut");
        await Book.KeepAsync(kraut, default);
        Assert.True(await Book.RemoveAsync(kraut.Id, default));
        Assert.False(await Book.RemoveAsync(kraut.Id, default));
        Assert.Empty(await Book.AllAsync(default));
    }

    private IRecipeBook Book => Get<IRecipeBook>();

    private static HouseholdRecipe Recipe(string name) => new()
    {
        Id = Guid.NewGuid(), Name = name, ChangedAt = Instant.FromUtc(2026, 10, 4, 16, 0), By = "Ada",
        Mixture = new Mixture
        {
            Vegetables = [new MixturePart("cabbage", 900), new MixturePart("carrot", 100, "grated")], Seasonings = [new MixturePart("caraway", 2.5)],
            WaterGrams = 50, SaltPercent = 6, SaltOf = SaltBasis.Brine, Sourness = Sourness.ALittleSour, Cut = Cut.Pieces, Allergens = ["celery"],
            Note = "two\nlines", VinegarGrams = 60, VinegarPercent = 6, StarterGrams = 50,
        },
    };
}
