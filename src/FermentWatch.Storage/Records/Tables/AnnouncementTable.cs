using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>What is to be taken back from brokers one day.</summary>
internal sealed class AnnouncementTable : IEntityTypeConfiguration<Announcement>
{
    public void Configure(EntityTypeBuilder<Announcement> builder)
    {
        builder.ToTable("announcement");
        builder.HasKey(announcement => announcement.Topic);
    }
}
