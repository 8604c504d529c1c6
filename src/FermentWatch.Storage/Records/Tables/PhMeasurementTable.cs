using FermentWatch.Kitchen.Observations;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>What only a pH has.</summary>
internal sealed class PhMeasurementTable : IEntityTypeConfiguration<PhMeasurement>
{
    public void Configure(EntityTypeBuilder<PhMeasurement> builder)
    {
        // By name: the science's own numbers may be put in another order.
        builder.Property(measurement => measurement.Method).HasConversion<string>();
    }
}
