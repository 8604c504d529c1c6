using System.Security.Claims;
using FermentWatch.Kitchen.Calendar;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Notices;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="ISignInBook"/>
internal sealed class SignInBook(IDbContextFactory<RecordsContext> contexts) : ISignInBook
{
    /// <summary>A sign-in that is kept up by use ends by itself after a year.</summary>
    private static readonly Duration Longest = Duration.FromDays(365);

    public async Task<Guid> BeginAsync(Guid accountId, Instant now, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.SignIns.Where(each => each.BegunAt < now - Longest).ExecuteDeleteAsync(cancellationToken);
        // Not of the time-ordered kind: nobody is to guess a neighbour.
        var begun = new SignIn { Id = Guid.NewGuid(), AccountId = accountId, BegunAt = now };
        context.SignIns.Add(begun);
        await context.SaveChangesAsync(cancellationToken);
        return begun.Id;
    }

    public async Task<SignedIn?> WhoAsync(Guid signInId, Instant now, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        Instant oldest = now - Longest;
        return await WhoAsync(context, context.Users.Where(account =>
            context.SignIns.Any(each => each.Id == signInId && each.BegunAt >= oldest && each.AccountId == account.Id)), cancellationToken);
    }

    /// <summary>The one account of a query, as a request knows its bearer; null where there is none.</summary>
    internal static async Task<SignedIn?> WhoAsync(RecordsContext context, IQueryable<Account> accounts, CancellationToken cancellationToken)
    {
        var found = await accounts.AsNoTracking().Select(account => new
        {
            account.Id, account.SecurityStamp, account.DisplayName,
            Roles = context.UserClaims.Where(claim => claim.UserId == account.Id && claim.ClaimType == ClaimTypes.Role).Select(claim =>
                claim.ClaimValue).ToList(),
        }).SingleOrDefaultAsync(cancellationToken);
        return found is null ? null : new SignedIn(found.Id, found.SecurityStamp ?? "", found.DisplayName, MemberBook.RoleOf(found.Roles));
    }

    public async Task EndAsync(Guid signInId, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.SignIns.Where(each => each.Id == signInId).ExecuteDeleteAsync(cancellationToken);
    }

    public async Task CloseAsync(string person, DoorsClosed why, Instant now, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        IQueryable<Account> accounts = context.Users.Where(account => account.DisplayName == person);
        await context.SignIns.Where(each => accounts.Any(account => account.Id == each.AccountId)).ExecuteDeleteAsync(cancellationToken);
        await context.ScriptKeys.Where(each => accounts.Any(account => account.Id == each.AccountId)).ExecuteDeleteAsync(cancellationToken);
        await accounts.ExecuteUpdateAsync(row => row.SetProperty(account => account.DoorsClosedAt, now), cancellationToken);
        await context.Set<CalendarFeed>().Where(feed => feed.Person == person).ExecuteDeleteAsync(cancellationToken);
        bool whole = why != DoorsClosed.PasswordChanged;
        await context.NoticeRoutes.Where(route =>
            route.Person == person && (whole || route.Channel == Channel.WebPush)).ExecuteDeleteAsync(cancellationToken);
        if (whole)
            await context.GuestLinks.Where(link => link.MadeBy == person && link.WithdrawnAt == null)
                .ExecuteUpdateAsync(row => row.SetProperty(link => link.WithdrawnAt, now), cancellationToken);
        if (why == DoorsClosed.Removed)
        {
            await context.Duties.Where(duty => duty.Person == person).ExecuteDeleteAsync(cancellationToken);
            await context.HandOvers.Where(each => each.Person == person).ExecuteDeleteAsync(cancellationToken);
        }
        await transaction.CommitAsync(cancellationToken);
    }
}
