using FermentWatch.Kitchen.Observations;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>What only a sighting has.</summary>
internal sealed class SightingTable : IEntityTypeConfiguration<Sighting>
{
    public void Configure(EntityTypeBuilder<Sighting> builder)
    {
        builder.Property(sighting => sighting.Kind).HasColumnName("Sighted");
        // By name, as the role of an account is written.
        builder.Property(sighting => sighting.SeenAs).HasConversion<string>();
    }
}
