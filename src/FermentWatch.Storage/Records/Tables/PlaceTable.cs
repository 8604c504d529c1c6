using FermentWatch.Kitchen.Places;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>Places. The form finds them by name whatever the case, so their names differ by more than case.</summary>
internal sealed class PlaceTable : IEntityTypeConfiguration<Place>
{
    public void Configure(EntityTypeBuilder<Place> builder)
    {
        builder.ToTable("place");
        builder.Property(place => place.Name).UseCollation("NOCASE");
        builder.HasIndex(place => place.Name).IsUnique();
    }
}
