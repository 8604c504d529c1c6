using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Probes;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.Storage.Records.Conversions;
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

/// <summary>Where sensors stood.</summary>
internal sealed class SensorPlacementTable : IEntityTypeConfiguration<SensorPlacement>
{
    public void Configure(EntityTypeBuilder<SensorPlacement> builder)
    {
        builder.ToTable("sensor_placement");
        builder.Property(placement => placement.Id).ValueGeneratedNever();
        builder.HasOne<Place>().WithMany().HasForeignKey(placement => placement.PlaceId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Jar>().WithMany().HasForeignKey(placement => placement.JarId).OnDelete(DeleteBehavior.Restrict);
    }
}

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

/// <summary>Who may publish what.</summary>
internal sealed class MqttCredentialTable : IEntityTypeConfiguration<MqttCredential>
{
    public void Configure(EntityTypeBuilder<MqttCredential> builder)
    {
        builder.ToTable("mqtt_credential");
        builder.HasIndex(credential => credential.User).IsUnique();
        builder.HasOne<Sensor>().WithMany().HasForeignKey(credential => credential.SensorId).OnDelete(DeleteBehavior.Restrict);
    }
}

/// <summary>Which rule has fed which sensor; gone with the rule.</summary>
internal sealed class SourceFeedTable : IEntityTypeConfiguration<SourceFeed>
{
    public void Configure(EntityTypeBuilder<SourceFeed> builder)
    {
        builder.ToTable("source_feed");
        builder.HasKey(feed => new { feed.RuleId, feed.SensorId });
        builder.HasOne<SourceRule>().WithMany().HasForeignKey(feed => feed.RuleId).OnDelete(DeleteBehavior.Cascade);
        builder.HasOne<Sensor>().WithMany().HasForeignKey(feed => feed.SensorId).OnDelete(DeleteBehavior.Restrict);
    }
}

/// <summary>Rules for sensors that were not made for us.</summary>
internal sealed class SourceRuleTable : IEntityTypeConfiguration<SourceRule>
{
    /// <summary>The place of a rule in the order in which they were added; the rules themselves have no use for it.</summary>
    internal const string Position = "Position";

    public void Configure(EntityTypeBuilder<SourceRule> builder)
    {
        builder.ToTable("source_rule");
        builder.Property(rule => rule.Id).ValueGeneratedNever();
        builder.Property<int>(Position);
        builder.HasIndex(Position).IsUnique();
    }
}

/// <summary>What is to be judged again.</summary>
internal sealed class RejudgeOrderTable : IEntityTypeConfiguration<RejudgeOrder>
{
    public void Configure(EntityTypeBuilder<RejudgeOrder> builder)
    {
        builder.ToTable("rejudge_order");
        builder.Property(order => order.Id).ValueGeneratedNever();
        builder.HasOne<Sensor>().WithMany().HasForeignKey(order => order.SensorId).OnDelete(DeleteBehavior.Restrict);
    }
}
