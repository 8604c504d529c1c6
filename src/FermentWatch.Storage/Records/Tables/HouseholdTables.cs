using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Storage.Records.Conversions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>The household: one row.</summary>
internal sealed class HouseholdTable : IEntityTypeConfiguration<Household>
{
    public void Configure(EntityTypeBuilder<Household> builder)
    {
        builder.ToTable("household");
        builder.Ignore(household => household.Zone);
        builder.Ignore(household => household.Measures);
        builder.Property(household => household.PhTool).HasConversion<string>();
        builder.Property(household => household.ClockFace).HasConversion<string>();
        builder.Property(household => household.WeekStart).HasConversion<string>();
    }
}

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

/// <summary>Morning rounds, one for each local date.</summary>
internal sealed class RoundTable : IEntityTypeConfiguration<Round>
{
    public void Configure(EntityTypeBuilder<Round> builder)
    {
        builder.ToTable("round");
        builder.HasKey(round => round.Date);
        builder.Property(round => round.TasteAsked).HasConversion(new GuidsConverter(), GuidsConverter.Comparer);
        builder.Property(round => round.DecideAsked).HasConversion(new GuidsConverter(), GuidsConverter.Comparer);
    }
}

/// <summary>What is to be taken back from brokers one day.</summary>
internal sealed class AnnouncementTable : IEntityTypeConfiguration<Announcement>
{
    public void Configure(EntityTypeBuilder<Announcement> builder)
    {
        builder.ToTable("announcement");
        builder.HasKey(announcement => announcement.Topic);
    }
}
