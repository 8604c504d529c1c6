using FermentWatch.Kitchen.Feeds;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>Addresses of calendars, one a person.</summary>
internal sealed class CalendarFeedTable : IEntityTypeConfiguration<CalendarFeed>
{
    public void Configure(EntityTypeBuilder<CalendarFeed> builder)
    {
        builder.ToTable("calendar_feed");
        builder.HasKey(feed => feed.Person);
        builder.HasIndex(feed => feed.Secret).IsUnique();
    }
}
