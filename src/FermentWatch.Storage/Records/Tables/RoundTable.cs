using FermentWatch.Kitchen.Rounds;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>Morning rounds, one for each local date.</summary>
internal sealed class RoundTable : IEntityTypeConfiguration<Round>
{
    public void Configure(EntityTypeBuilder<Round> builder)
    {
        builder.ToTable("round");
        builder.HasKey(round => round.Date);
    }
}
