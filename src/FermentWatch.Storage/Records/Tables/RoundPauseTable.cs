using FermentWatch.Kitchen.Members;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>Spans without a round.</summary>
internal sealed class RoundPauseTable : IEntityTypeConfiguration<RoundPause>
{
    public void Configure(EntityTypeBuilder<RoundPause> builder) => builder.ToTable("round_pause");
}
