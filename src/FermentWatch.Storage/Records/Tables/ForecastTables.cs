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

/// <summary>What was forecast day by day.</summary>
internal sealed class ForecastMarkTable : IEntityTypeConfiguration<ForecastMarkRow>
{
    public void Configure(EntityTypeBuilder<ForecastMarkRow> builder)
    {
        builder.ToTable("forecast_mark");
        builder.HasKey(row => new { row.JarId, row.Day });
    }
}
