using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>Kinds of occasions this household is not told of.</summary>
internal sealed class MutedKindTable : IEntityTypeConfiguration<MutedKind>
{
    public void Configure(EntityTypeBuilder<MutedKind> builder)
    {
        builder.ToTable("muted_kind");
        builder.HasKey(muted => muted.Kind);
        builder.Property(muted => muted.Kind).ValueGeneratedNever();
    }
}
