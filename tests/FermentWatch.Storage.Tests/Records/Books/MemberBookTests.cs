using System.Security.Claims;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.Storage.Records;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace FermentWatch.Storage.Tests.Records.Books;

public sealed class MemberBookTests : OpenedRecords
{
    private static readonly LocalDate Today = new(2025, 10, 4);

    private IMemberBook Book => Get<IMemberBook>();

    protected override void Configure(IServiceCollection services) => services.AddIdentityCore<Account>().AddEntityFrameworkStores<RecordsContext>();

    [Fact]
    public async Task AllAsync_AccountsAndDuties_AreOneMemberEach()
    {
        await AddAccountAsync("Lena", child: true);
        await AddAccountAsync("Ada", child: false);
        await Book.WriteAsync(
            new Duty { Person = "Lena", Days = Weekdays.Saturday, QuietFrom = new LocalTime(20, 0), QuietUntil = new LocalTime(7, 30) }, default);
        await Book.WriteAsync(new Duty { Person = "Grandmother", Days = Weekdays.Sunday }, default);
        await Book.WriteAsync(new Duty { Person = "Grandmother", Days = Weekdays.Monday }, default);
        Assert.Equal(
            [("Ada", MemberRole.Adult, Weekdays.All, null), ("Grandmother", MemberRole.Child, Weekdays.Monday, null),
            ("Lena", MemberRole.Child, Weekdays.Saturday, new QuietHours(new LocalTime(20, 0), new LocalTime(7, 30)))],
            (await Book.AllAsync(default)).Select(member => (member.Name, member.Role, member.Duty.Days, member.Duty.Quiet)));
    }

    [Fact]
    public async Task HandOverAsync_TwiceForADate_TheLastWordHoldsUntilTakenBack()
    {
        await Book.HandOverAsync(new HandOver { Date = Today, Person = "Ada", By = "Mira" }, default);
        await Book.HandOverAsync(new HandOver { Date = Today, Person = "Mira", By = "Ada" }, default);
        Assert.Equal("Mira", Assert.Single((await Book.RosterAsync(Today, default)).OnDuty(Today)).Name);
        await Book.TakeBackAsync(Today, default);
        Assert.Empty((await Book.RosterAsync(Today, default)).OnDuty(Today));
    }

    [Fact]
    public async Task PauseAsync_EndedEarly_HoldsUntilThen()
    {
        var pause = new RoundPause { Id = Guid.CreateVersion7(), From = Today, Until = Today.PlusDays(9), By = "Ada" };
        await Book.PauseAsync(pause, default);
        pause.Until = Today.PlusDays(2);
        await Book.PauseAsync(pause, default);
        Roster roster = await Book.RosterAsync(Today, default);
        Assert.Equal([true, true, false], Enumerable.Range(0, 3).Select(day => roster.PauseOn(Today.PlusDays(day)) is not null));
        Assert.Empty(await Book.PausesAsync(Today.PlusDays(3), default));
    }

    [Fact]
    public async Task GuestLinks_ExpiredOrWithdrawn_AreNoLongerOpen()
    {
        var guests = Get<IGuestBook>();
        GuestLink ben = Guest("Ben", 1), eva = Guest("Eva", 2), tom = Guest("Tom", 3);
        foreach (GuestLink link in (GuestLink[])[ben, eva, tom])
            await guests.AddAsync(link, default);
        await guests.WithdrawAsync(tom.Id, Noon, default);
        Assert.Equal(["Eva"], (await guests.OpenAsync(Noon + Duration.FromDays(1), default)).Select(link => link.Name));
        Assert.Equal("Tom", (await guests.FindAsync(LongSecret.HashOf("Tom"), default))?.Name);
        Assert.Null(await guests.FindAsync("Tom", default));
    }

    private static GuestLink Guest(string name, int days) => new()
    {
        Id = Guid.CreateVersion7(), Name = name, SecretHash = LongSecret.HashOf(name), MadeBy = "Ada", MadeAt = Noon,
            ExpiresAt = Noon + Duration.FromDays(days),
    };

    private async Task AddAccountAsync(string name, bool child)
    {
        await using AsyncServiceScope scope = Scope();
        var accounts = scope.ServiceProvider.GetRequiredService<UserManager<Account>>();
        var account = new Account { Id = Guid.CreateVersion7(), UserName = name, DisplayName = name };
        Assert.True((await accounts.CreateAsync(account)).Succeeded);
        await accounts.AddClaimAsync(account, new Claim(ClaimTypes.Role, child ? nameof(MemberRole.Child) : nameof(MemberRole.Adult)));
    }
}
