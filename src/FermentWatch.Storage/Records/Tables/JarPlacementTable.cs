using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>Where jars stood.</summary>
internal sealed class JarPlacementTable : IEntityTypeConfiguration<JarPlacement>
{
    public void Configure(EntityTypeBuilder<JarPlacement> builder)
    {
        builder.ToTable("jar_placement");
        builder.Property(placement => placement.Id).ValueGeneratedNever();
        builder.HasOne<Place>().WithMany().HasForeignKey(placement => placement.PlaceId).OnDelete(DeleteBehavior.Restrict);
    }
}
