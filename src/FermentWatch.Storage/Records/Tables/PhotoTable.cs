using FermentWatch.Kitchen.Observations;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>Pictures, one for each observation that has one.</summary>
internal sealed class PhotoTable : IEntityTypeConfiguration<Photo>
{
    public void Configure(EntityTypeBuilder<Photo> builder)
    {
        builder.ToTable("photo");
        builder.HasKey(photo => photo.ObservationId);
        builder.HasOne<Observation>().WithOne().HasForeignKey<Photo>(photo => photo.ObservationId);
    }
}
