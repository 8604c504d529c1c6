using FermentWatch.Storage.Records.Derived;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>The latest forecasts; no row refers to them, they may be deleted.</summary>
internal sealed class ForecastTable : IEntityTypeConfiguration<ForecastRow>
{
    public void Configure(EntityTypeBuilder<ForecastRow> builder)
    {
        builder.ToTable("forecast");
        builder.HasKey(row => row.JarId);
        builder.Property(row => row.JarId).ValueGeneratedNever();
    }
}
