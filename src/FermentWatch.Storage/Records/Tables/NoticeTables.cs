using FermentWatch.Kitchen.Calendar;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Storage.Records.Conversions;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>The outbox.</summary>
internal sealed class NoticeTable : IEntityTypeConfiguration<Notice>
{
    public void Configure(EntityTypeBuilder<Notice> builder)
    {
        builder.ToTable("notice");
        builder.Ignore(notice => notice.ClaimedUntil);
        builder.Property(notice => notice.Question).HasConversion(new QuestionConverter(), QuestionConverter.Comparer);
        builder.HasIndex(notice => notice.Key).IsUnique();
        builder.HasIndex(notice => new { notice.State, notice.NextAttemptAt });
    }
}

/// <summary>How people are reached.</summary>
internal sealed class NoticeRouteTable : IEntityTypeConfiguration<NoticeRoute>
{
    public void Configure(EntityTypeBuilder<NoticeRoute> builder)
    {
        builder.ToTable("notice_route");
    }
}

/// <summary>Kinds of occasions this household is not told of.</summary>
internal sealed class MutedKindTable : IEntityTypeConfiguration<MutedKind>
{
    public void Configure(EntityTypeBuilder<MutedKind> builder)
    {
        builder.ToTable("muted_kind");
        builder.HasKey(muted => muted.Kind);
        builder.Property(muted => muted.Kind).ValueGeneratedNever();
    }
}

/// <summary>What was told, each cause once.</summary>
internal sealed class ToldOccasionTable : IEntityTypeConfiguration<ToldOccasion>
{
    public void Configure(EntityTypeBuilder<ToldOccasion> builder)
    {
        builder.ToTable("told_occasion");
        builder.HasIndex(told => told.Key).IsUnique();
    }
}

/// <summary>The key pair for push, one row.</summary>
internal sealed class PushKeyPairTable : IEntityTypeConfiguration<PushKeyPair>
{
    public void Configure(EntityTypeBuilder<PushKeyPair> builder)
    {
        builder.ToTable("push_key_pair");
        builder.HasKey(pair => pair.PublicKey);
    }
}

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
