using FermentWatch.Kinetics.Observation;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Storage.Records.Conversions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>What only a pH has.</summary>
internal sealed class PhMeasurementTable : IEntityTypeConfiguration<PhMeasurement>
{
    public void Configure(EntityTypeBuilder<PhMeasurement> builder)
    {
        // By name: the science's own numbers may be put in another order.
        builder.Property(measurement => measurement.Method).HasConversion(new EnumNameConverter<PhMethod>(PhMethod.Strip));
    }
}
