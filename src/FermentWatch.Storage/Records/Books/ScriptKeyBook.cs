using FermentWatch.Kitchen.Members;
using Microsoft.EntityFrameworkCore;
using NodaTime;

namespace FermentWatch.Storage.Records.Books;

/// <inheritdoc cref="IScriptKeyBook"/>
internal sealed class ScriptKeyBook(IDbContextFactory<RecordsContext> contexts) : IScriptKeyBook
{
    public async Task AddAsync(ScriptKey key, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        context.ScriptKeys.Add(key);
        await context.SaveChangesAsync(cancellationToken);
    }

    public async Task<IReadOnlyList<(ScriptKey Key, string Person)>> AllAsync(CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        var all = await (
            from key in context.ScriptKeys.AsNoTracking()
            join account in context.Users on key.AccountId equals account.Id
            orderby key.Name, key.Id
            select new { key, account.DisplayName }).ToListAsync(cancellationToken);
        return [.. all.Select(each => (each.key, each.DisplayName))];
    }

    public async Task<(ScriptKey Key, SignedIn Who)?> FindAsync(string secretHash, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        if (await context.ScriptKeys.AsNoTracking().SingleOrDefaultAsync(each => each.SecretHash == secretHash, cancellationToken) is not { } key)
            return null;
        SignedIn? who = await SignInBook.WhoAsync(context, context.Users.Where(account => account.Id == key.AccountId), cancellationToken);
        return who is null ? null : (key, who);
    }

    public async Task NoteUseAsync(Guid id, Instant now, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.ScriptKeys.Where(key => key.Id == id).ExecuteUpdateAsync(row => row.SetProperty(key => key.UsedAt, now), cancellationToken);
    }

    public async Task WithdrawAsync(Guid id, CancellationToken cancellationToken)
    {
        await using var context = await contexts.CreateDbContextAsync(cancellationToken);
        await context.ScriptKeys.Where(key => key.Id == id).ExecuteDeleteAsync(cancellationToken);
    }
}
