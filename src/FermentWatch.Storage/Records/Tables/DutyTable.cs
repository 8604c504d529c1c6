using FermentWatch.Kitchen.Members;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>Who does the round on which days, and quiet hours.</summary>
internal sealed class DutyTable : IEntityTypeConfiguration<Duty>
{
    public void Configure(EntityTypeBuilder<Duty> builder)
    {
        builder.ToTable("duty");
        builder.HasKey(duty => duty.Person);
        builder.Ignore(duty => duty.Quiet);
    }
}
