using FermentWatch.Kitchen.Sensors;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>Sensors. A slug is free again once its sensor is out of service; a key never is.</summary>
internal sealed class SensorTable : IEntityTypeConfiguration<Sensor>
{
    public void Configure(EntityTypeBuilder<Sensor> builder)
    {
        builder.ToTable("sensor");
        builder.HasIndex(sensor => sensor.Key).IsUnique();
        builder.HasIndex(sensor => sensor.Slug).IsUnique().HasFilter("\"RemovedAt\" IS NULL");
        builder.HasMany(sensor => sensor.Placements).WithOne().HasForeignKey(placement => placement.SensorId);
    }
}
