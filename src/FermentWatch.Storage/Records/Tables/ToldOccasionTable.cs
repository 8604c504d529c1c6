using FermentWatch.Kitchen.Occasions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>What was told, each cause once.</summary>
internal sealed class ToldOccasionTable : IEntityTypeConfiguration<ToldOccasion>
{
    public void Configure(EntityTypeBuilder<ToldOccasion> builder)
    {
        builder.ToTable("told_occasion");
        builder.HasIndex(told => told.Key).IsUnique();
    }
}
