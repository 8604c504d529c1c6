using FermentWatch.Kitchen.Sensors;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>Who may publish what.</summary>
internal sealed class MqttCredentialTable : IEntityTypeConfiguration<MqttCredential>
{
    public void Configure(EntityTypeBuilder<MqttCredential> builder)
    {
        builder.ToTable("mqtt_credential");
        builder.HasIndex(credential => credential.User).IsUnique();
        builder.HasOne<Sensor>().WithMany().HasForeignKey(credential => credential.SensorId).OnDelete(DeleteBehavior.Restrict);
    }
}
