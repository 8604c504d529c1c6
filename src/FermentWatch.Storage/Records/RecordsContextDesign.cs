using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Design;

namespace FermentWatch.Storage.Records;

/// <summary>Lets the tool that writes migrations make a context; it reads the model and opens no file.</summary>
internal sealed class RecordsContextDesign : IDesignTimeDbContextFactory<RecordsContext>
{
    public RecordsContext CreateDbContext(string[] args) => RecordsConnection.Context("design.db", SqliteOpenMode.Memory);
}
