using FermentWatch.Kitchen.Sensors;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

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
