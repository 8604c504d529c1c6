using FermentWatch.Kitchen.Notices;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>How people are reached.</summary>
internal sealed class NoticeRouteTable : IEntityTypeConfiguration<NoticeRoute>
{
    public void Configure(EntityTypeBuilder<NoticeRoute> builder)
    {
        builder.ToTable("notice_route");
    }
}
