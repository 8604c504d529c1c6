using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Sensors;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

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
