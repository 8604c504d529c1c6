using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage.Records.Conversions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>What probes showed in buffers.</summary>
internal sealed class ProbeCheckTable : IEntityTypeConfiguration<ProbeCheck>
{
    public void Configure(EntityTypeBuilder<ProbeCheck> builder)
    {
        builder.ToTable("probe_check");
        builder.Property(check => check.Id).ValueGeneratedNever();
        builder.Property(check => check.Points).HasConversion(new BufferReadingsConverter(), BufferReadingsConverter.Comparer);
        builder.Ignore(check => check.Calibration);
        builder.HasOne<Sensor>().WithMany().HasForeignKey(check => check.SensorId).OnDelete(DeleteBehavior.Restrict);
    }
}
