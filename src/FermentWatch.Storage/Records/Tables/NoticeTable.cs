using FermentWatch.Kitchen.Notices;
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
