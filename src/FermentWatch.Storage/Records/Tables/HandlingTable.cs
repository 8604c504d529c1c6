using FermentWatch.Kitchen.Observations;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>What only a handling has.</summary>
internal sealed class HandlingTable : IEntityTypeConfiguration<Handling>
{
    public void Configure(EntityTypeBuilder<Handling> builder)
    {
        builder.Property(handling => handling.Kind).HasColumnName("Handled");
    }
}
