using FermentWatch.Storage.Records.Derived;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>What was forecast day by day.</summary>
internal sealed class ForecastMarkTable : IEntityTypeConfiguration<ForecastMarkRow>
{
    public void Configure(EntityTypeBuilder<ForecastMarkRow> builder)
    {
        builder.ToTable("forecast_mark");
        builder.HasKey(row => new { row.JarId, row.Day });
    }
}
