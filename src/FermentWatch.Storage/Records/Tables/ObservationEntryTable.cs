using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>The order in which observations were entered.</summary>
internal sealed class ObservationEntryTable : IEntityTypeConfiguration<ObservationEntry>
{
    public void Configure(EntityTypeBuilder<ObservationEntry> builder)
    {
        builder.ToTable("observation_entry");
        builder.HasKey(entry => entry.Seq);
        builder.HasOne(entry => entry.Observation).WithOne().HasForeignKey<ObservationEntry>(entry => entry.ObservationId);
    }
}
