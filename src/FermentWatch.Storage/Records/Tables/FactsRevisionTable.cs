using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>The count of changes.</summary>
internal sealed class FactsRevisionTable : IEntityTypeConfiguration<FactsRevision>
{
    public void Configure(EntityTypeBuilder<FactsRevision> builder)
    {
        builder.ToTable("facts_revision");
        builder.Property(row => row.Id).ValueGeneratedNever();
        builder.HasData(new FactsRevision());
    }
}
