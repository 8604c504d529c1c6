using FermentWatch.Kitchen.Readings;
using FermentWatch.Storage.Records;
using FermentWatch.Storage.Tests.Readings;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;

namespace FermentWatch.Storage.Tests.Records;

public sealed class AccountTests : OpenedRecords
{
    [Fact]
    public async Task UserManager_AccountCreated_IsFoundAfterARestart()
    {
        await using (var scope = Scope())
        {
            var users = scope.ServiceProvider.GetRequiredService<UserManager<Account>>();
            var created = await users.CreateAsync(new Account { Id = Guid.CreateVersion7(), UserName = "ada", DisplayName = "Ada" },
                "Brine-over-the-solids-1");
            Assert.True(created.Succeeded, string.Join(' ', created.Errors.Select(error => error.Description)));
            Assert.False((await users.CreateAsync(new Account { Id = Guid.CreateVersion7(), UserName = "ADA", DisplayName = "Another" })).Succeeded);
        }

        await RestartAsync();
        await using var later = Scope();
        var found = await later.ServiceProvider.GetRequiredService<UserManager<Account>>().FindByNameAsync("Ada");
        Assert.Equal("Ada", found!.DisplayName);
        Assert.True(await later.ServiceProvider.GetRequiredService<UserManager<Account>>().CheckPasswordAsync(found, "Brine-over-the-solids-1"));
        Assert.Equal(RevisionOfANewDatabase, await RevisionAsync());
    }

    [Fact]
    public async Task DataProtection_AfterARestart_ReadsWhatItProtected()
    {
        string protectedText = Get<IDataProtectionProvider>().CreateProtector("cookie").Protect("Ada is signed in");
        await RestartAsync();
        Assert.Equal("Ada is signed in", Get<IDataProtectionProvider>().CreateProtector("cookie").Unprotect(protectedText));
        Assert.Equal(1L, TemporaryFolder.Sql(DatabasePath, "SELECT count(*) FROM DataProtectionKeys"));
    }

    [Fact]
    public async Task ReadingPorts_ThroughTheDoor_AreOneStore()
    {
        await Get<IReadingIntake>().AppendAsync([Make.Timed(0, 18)], default);
        Assert.Single(await Get<IReadingLog>().LastAsync(1, default));
    }

    protected override void Configure(IServiceCollection services) =>
        services.AddIdentityCore<Account>().AddRoles<IdentityRole<Guid>>().AddEntityFrameworkStores<RecordsContext>();
}
