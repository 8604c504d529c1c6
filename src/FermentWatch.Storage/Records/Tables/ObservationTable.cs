using FermentWatch.Kitchen.Observations;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>What was seen, measured, tasted and done: one table, told apart by kind.</summary>
internal sealed class ObservationTable : IEntityTypeConfiguration<Observation>
{
    public void Configure(EntityTypeBuilder<Observation> builder)
    {
        builder.ToTable("observation");
        builder.Property(observation => observation.Id).ValueGeneratedNever();
        builder.HasDiscriminator<string>("kind")
            .HasValue<Handling>("handling")
            .HasValue<Look>("look")
            .HasValue<PhMeasurement>("ph")
            .HasValue<Sighting>("sighting")
            .HasValue<StageChange>("stage")
            .HasValue<Taste>("taste")
            .HasValue<Titration>("titration")
            // A kind that a later version knows is left out, and the rest is read.
            .IsComplete(false);
    }
}
