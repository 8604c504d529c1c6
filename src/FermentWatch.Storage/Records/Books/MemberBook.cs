using System.Linq.Expressions;
using System.Security.Claims;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IMemberBook"/>
internal sealed class MemberBook(IDbContextFactory<RecordsContext> contexts) : IMemberBook
{
    public async Task<IReadOnlyList<Member>> AllAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await AllAsync(context, cancellationToken);
    }

    public Task WriteAsync(Duty duty, CancellationToken cancellationToken) => PutAsync(duty, each => each.Person == duty.Person, cancellationToken);

    public async Task<Roster> RosterAsync(LocalDate from, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var handOvers = await context.HandOvers.AsNoTracking().Where(each => each.Date >= from).OrderBy(each =>
            each.Date).ToListAsync(cancellationToken);
        return new Roster(await AllAsync(context, cancellationToken), handOvers, await PausesAsync(context, from, cancellationToken));
    }

    public Task HandOverAsync(HandOver handOver, CancellationToken cancellationToken) =>
        PutAsync(handOver, each => each.Date == handOver.Date, cancellationToken);

    public async Task TakeBackAsync(LocalDate date, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.HandOvers.Where(each => each.Date == date).ExecuteDeleteAsync(cancellationToken);
    }

    public async Task<IReadOnlyList<RoundPause>> PausesAsync(LocalDate from, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        return await PausesAsync(context, from, cancellationToken);
    }

    public Task PauseAsync(RoundPause pause, CancellationToken cancellationToken) => PutAsync(pause, each => each.Id == pause.Id, cancellationToken);

    /// <summary>The role by what is on record: whoever is not said to be an adult is none.</summary>
    internal static MemberRole RoleOf(IEnumerable<string?> roles) =>
        roles.ToList() is [nameof(MemberRole.Adult)] ? MemberRole.Adult : MemberRole.Child;

    /// <summary>Adds a row, or writes over the one that stands for the same.</summary>
    private async Task PutAsync<T>(T row, Expression<Func<T, bool>> isSame, CancellationToken cancellationToken) where T : class
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await using var transaction = await context.Database.BeginTransactionAsync(cancellationToken);
        bool known = await context.Set<T>().AnyAsync(isSame, cancellationToken);
        context.Entry(row).State = known ? EntityState.Modified : EntityState.Added;
        await context.SaveChangesAsync(cancellationToken);
        await transaction.CommitAsync(cancellationToken);
    }

    private static async Task<IReadOnlyList<Member>> AllAsync(RecordsContext context, CancellationToken cancellationToken)
    {
        var accounts = await context.Users.AsNoTracking().Select(account =>
            new { account.Id, account.DisplayName, account.DoorsClosedAt }).ToListAsync(cancellationToken);
        var roles = (await context.UserClaims.Where(claim => claim.ClaimType == ClaimTypes.Role).ToListAsync(cancellationToken))
            .ToLookup(claim => claim.UserId, claim => claim.ClaimValue);
        var duties = await context.Duties.AsNoTracking().ToDictionaryAsync(duty => duty.Person, cancellationToken);
        var named = accounts.ToDictionary(account => account.DisplayName, account =>
            Member.Unknown(account.DisplayName) with { AccountId = account.Id, Role = RoleOf(roles[account.Id]), SignsIn = true,
                DoorsClosedAt = account.DoorsClosedAt });
        return [.. named.Keys.Union(duties.Keys).Order(StringComparer.OrdinalIgnoreCase)
            .Select(name => named.GetValueOrDefault(name) ?? Member.Unknown(name))
            .Select(member => duties.TryGetValue(member.Name, out Duty? duty) ? member with { Duty = duty } : member)];
    }

    private static async Task<IReadOnlyList<RoundPause>> PausesAsync(RecordsContext context, LocalDate from, CancellationToken cancellationToken) =>
        await context.RoundPauses.AsNoTracking().Where(pause => pause.Until >= from).OrderBy(pause => pause.From).ToListAsync(cancellationToken);
}
