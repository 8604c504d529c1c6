using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>Who is signed in; with an account its sign-ins go.</summary>
internal sealed class SignInTable : IEntityTypeConfiguration<SignIn>
{
    public void Configure(EntityTypeBuilder<SignIn> builder)
    {
        builder.ToTable("sign_in");
        builder.HasOne<Account>().WithMany().HasForeignKey(each => each.AccountId).OnDelete(DeleteBehavior.Cascade);
    }
}
