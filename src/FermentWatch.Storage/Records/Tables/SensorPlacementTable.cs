using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Sensors;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>Where sensors stood.</summary>
internal sealed class SensorPlacementTable : IEntityTypeConfiguration<SensorPlacement>
{
    public void Configure(EntityTypeBuilder<SensorPlacement> builder)
    {
        builder.ToTable("sensor_placement");
        builder.Property(placement => placement.Id).ValueGeneratedNever();
        builder.HasOne<Place>().WithMany().HasForeignKey(placement => placement.PlaceId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Jar>().WithMany().HasForeignKey(placement => placement.JarId).OnDelete(DeleteBehavior.Restrict);
    }
}
