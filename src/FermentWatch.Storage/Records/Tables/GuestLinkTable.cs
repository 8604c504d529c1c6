using FermentWatch.Kitchen.Members;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>Links for whoever looks in.</summary>
internal sealed class GuestLinkTable : IEntityTypeConfiguration<GuestLink>
{
    public void Configure(EntityTypeBuilder<GuestLink> builder)
    {
        builder.ToTable("guest_link");
        builder.Ignore(link => link.By);
        builder.HasIndex(link => link.SecretHash).IsUnique();
    }
}
