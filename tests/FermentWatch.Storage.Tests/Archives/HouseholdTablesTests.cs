using FermentWatch.Storage.Archives;
using FermentWatch.Storage.Records;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Storage.Tests.Archives;

public sealed class HouseholdTablesTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    /// <summary>A table that is added fails here until somebody decides: it comes along, or stays behind with a reason.</summary>
    [Fact]
    public void EveryTableOfTheRecords_IsTakenAlongOrLeftBehindWithAReason()
    {
        using RecordsContext context = RecordsConnection.Context(_folder.File("unopened.db"), SqliteOpenMode.ReadOnly);
        string[] tables = [.. context.Model.GetEntityTypes().Select(entity => entity.GetTableName()!).Distinct().Order(StringComparer.Ordinal)];
        string[] decided = [.. HouseholdTables.Taken.Select(table => table.Name).Concat(HouseholdTables.LeftOut.Keys).Order(StringComparer.Ordinal)];
        Assert.Equal(tables, decided);
        Assert.All(HouseholdTables.LeftOut.Values, reason => Assert.True(reason.Length > 5, reason));
        Assert.Equal(decided.Length, decided.Distinct().Count());
    }

    [Fact]
    public void EveryNumberThatIsTaken_SaysItsUnitAndEveryColumnItsOwnName()
    {
        RecordsDatabase.CreateOrUpgrade(_folder.File("records.db"), TimeProvider.System);
        using RecordsContext context = RecordsConnection.Context(_folder.File("records.db"), SqliteOpenMode.ReadOnly);
        using SqliteConnection connection = DatabaseLook.Open(_folder.File("records.db"));
        foreach (TakenTable table in HouseholdTables.Taken)
        {
            TableShape shape = TableShape.Of(connection, null, table);
            IReadOnlyList<ColumnMeaning> columns = ColumnMeaning.Of(shape, context);
            Assert.DoesNotContain(columns, column => column.Words == "number");
            Assert.Equal(columns.Count, columns.Select(column => column.Column.Title).Distinct().Count());
            Assert.Equal(table.Columns?.Count ?? columns.Count, columns.Count);
        }
    }
}
