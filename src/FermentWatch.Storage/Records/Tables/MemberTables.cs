using FermentWatch.Kitchen.Members;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>What an account has beyond that of Identity.</summary>
internal sealed class AccountTable : IEntityTypeConfiguration<Account>
{
    public void Configure(EntityTypeBuilder<Account> builder)
    {
        builder.Property(account => account.DisplayName).IsRequired();
    }
}

/// <summary>Who is signed in; with an account its sign-ins go.</summary>
internal sealed class SignInTable : IEntityTypeConfiguration<SignIn>
{
    public void Configure(EntityTypeBuilder<SignIn> builder)
    {
        builder.ToTable("sign_in");
        builder.HasOne<Account>().WithMany().HasForeignKey(each => each.AccountId).OnDelete(DeleteBehavior.Cascade);
    }
}

/// <summary>Keys for scripts; with an account its keys go.</summary>
internal sealed class ScriptKeyTable : IEntityTypeConfiguration<ScriptKey>
{
    public void Configure(EntityTypeBuilder<ScriptKey> builder)
    {
        builder.ToTable("script_key");
        builder.HasOne<Account>().WithMany().HasForeignKey(key => key.AccountId).OnDelete(DeleteBehavior.Cascade);
        builder.HasIndex(key => key.SecretHash).IsUnique();
    }
}

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

/// <summary>Dates on which somebody else does the round.</summary>
internal sealed class HandOverTable : IEntityTypeConfiguration<HandOver>
{
    public void Configure(EntityTypeBuilder<HandOver> builder)
    {
        builder.ToTable("hand_over");
        builder.HasKey(handOver => handOver.Date);
    }
}

/// <summary>Spans without a round.</summary>
internal sealed class RoundPauseTable : IEntityTypeConfiguration<RoundPause>
{
    public void Configure(EntityTypeBuilder<RoundPause> builder) => builder.ToTable("round_pause");
}

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
