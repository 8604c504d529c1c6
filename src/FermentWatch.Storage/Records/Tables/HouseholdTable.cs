using FermentWatch.Kitchen.Households;
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
    }
}
