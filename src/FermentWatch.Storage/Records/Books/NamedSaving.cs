using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Storage.Records.Books;

/// <summary>Saving something whose name the household chooses.</summary>
internal static class NamedSaving
{
    private const int UniqueConstraint = 2067;

    /// <exception cref="NameTakenException">The name is in use.</exception>
    internal static async Task SaveNamedAsync(this RecordsContext context, string what, string name, CancellationToken cancellationToken)
    {
        try
        {
            await context.SaveChangesAsync(cancellationToken);
        }
        catch (DbUpdateException trouble) when (trouble.InnerException is SqliteException { SqliteExtendedErrorCode: UniqueConstraint })
        {
            throw new NameTakenException(what, name, trouble);
        }
    }
}
