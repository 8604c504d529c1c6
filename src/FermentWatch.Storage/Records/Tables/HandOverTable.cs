using FermentWatch.Kitchen.Members;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>Dates on which somebody else does the round.</summary>
internal sealed class HandOverTable : IEntityTypeConfiguration<HandOver>
{
    public void Configure(EntityTypeBuilder<HandOver> builder)
    {
        builder.ToTable("hand_over");
        builder.HasKey(handOver => handOver.Date);
    }
}
