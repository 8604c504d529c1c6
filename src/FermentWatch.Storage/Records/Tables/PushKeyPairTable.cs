using FermentWatch.Kitchen.Notices;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>The key pair for push, one row.</summary>
internal sealed class PushKeyPairTable : IEntityTypeConfiguration<PushKeyPair>
{
    public void Configure(EntityTypeBuilder<PushKeyPair> builder)
    {
        builder.ToTable("push_key_pair");
        builder.HasKey(pair => pair.PublicKey);
    }
}
