using FermentWatch.Kitchen.Recipes;
using FermentWatch.Storage.Records.Conversions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>Recipes; their names differ by more than case.</summary>
internal sealed class RecipeTable : IEntityTypeConfiguration<HouseholdRecipe>
{
    public void Configure(EntityTypeBuilder<HouseholdRecipe> builder)
    {
        builder.ToTable("recipe");
        builder.Property(recipe => recipe.Id).ValueGeneratedNever();
        builder.Property(recipe => recipe.Name).UseCollation("NOCASE");
        builder.HasIndex(recipe => recipe.Name).IsUnique();
        builder.Property(recipe => recipe.Mixture).HasConversion(new MixtureConverter(), MixtureConverter.Comparer);
    }
}
