using System.Globalization;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Judging;
using FermentWatch.Kitchen.Notices;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Occasions;
using FermentWatch.Kitchen.Publishing;
using FermentWatch.Kitchen.Rounds;
using FermentWatch.Storage.Records;
using Microsoft.AspNetCore.Builder;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Xunit.Abstractions;

namespace FermentWatch.Service.Tests.Health;

/// <summary>
/// Every table of both databases gets, beside its own rows, a copy of one of them for each of its columns with a value nobody sends in
/// it. Every pass must run to its end, and what is healthy must get its forecast, its round and its notice.
/// </summary>
public sealed class PoisonedTablesTests(FoundedHousehold founded, ITestOutputHelper output) : IClassFixture<FoundedHousehold>, IDisposable
{
    private static readonly Instant Now = FoundedHousehold.Now;

    /// <summary>There is one row of each by design; a second is no fault that a door lets in.</summary>
    private static readonly string[] SingleRows = ["household", "facts_revision", "state", "push_key_pair"];

    private static readonly IModel Model = RecordsModel();

    private readonly string _folder = founded.Copy();

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task Passes_PoisonInEveryColumnOfEveryTable_GoOnForTheRest()
    {
        int poisoned = Poison("records.db") + Poison("readings.db");
        output.WriteLine($"{poisoned} poisoned rows");
        // A jar that stands in a place that is not there may be set aside; every other must not notice.
        Guid[] hurt = Hurt();
        IReadOnlyList<Jar> healthy = [.. founded.Jars.Where(jar => !hurt.Contains(jar.Id))];
        Assert.True(poisoned > 300, $"{poisoned} rows");

        await using WebApplication app = FoundedHousehold.Service(_folder, Now + Duration.FromHours(20));
        IServiceProvider services = app.Services;
        Instant later = Now + Duration.FromHours(20);
        await services.GetRequiredService<JudgingPass>().RunAsync(default);
        await services.GetRequiredService<ForecastPass>().RunAsync(later, default);
        foreach (SetAsideItem item in services.GetRequiredService<SetAside>().Items)
            output.WriteLine($"{item.Pass}: {item.What}: {item.Reason}");
        var forecasts = (await services.GetRequiredService<IForecastBook>().LatestAsync(default)).ToDictionary(forecast => forecast.JarId);
        foreach (Jar jar in healthy.Where(jar => jar.Stage is JarStage.Fermenting or JarStage.Cold))
            Assert.True(forecasts.GetValueOrDefault(jar.Id)?.AsOf >= Now, $"jar {jar.Number} has no forecast of today");

        Assert.Contains(new LocalDate(2026, 10, 5), await services.GetRequiredService<RoundPass>().RunAsync(later, default));
        await services.GetRequiredService<OccasionPass>().RunAsync(later, default);
        await services.GetRequiredService<StatePass>().RunAsync(later, default);
        await services.GetRequiredService<AnnouncementPass>().RunAsync(default);
        await services.GetRequiredService<DeliveryPass>().RunAsync(default);
        Assert.Contains(await services.GetRequiredService<INoticeBook>().LatestAsync(1000, default), notice =>
            notice.Key.StartsWith("round/2026-10-05", StringComparison.Ordinal));
        Assert.DoesNotContain(services.GetRequiredService<SetAside>().Items, item => healthy.Any(jar => item.What == $"jar {jar.Number}"));
    }

    [Theory]
    [InlineData("TimeZoneId", "'Nowhere/At all'")]
    [InlineData("RoundAt", "'half past'")]
    [InlineData("EveningAt", "''")]
    [InlineData("Mould", "99")]
    [InlineData("MassUnit", "-1")]
    [InlineData("TemperatureUnit", "2147483647")]
    public async Task Rounds_AHouseholdOfOddSettings_AreOpened(string column, string value)
    {
        using (SqliteConnection records = Open("records.db"))
            Execute(records, $"UPDATE household SET {column} = {value}");
        await using WebApplication app = FoundedHousehold.Service(_folder, Now + Duration.FromDays(1));
        Instant tomorrow = Now + Duration.FromDays(1);
        await app.Services.GetRequiredService<ForecastPass>().RunAsync(tomorrow, default);
        await app.Services.GetRequiredService<RoundPass>().RunAsync(tomorrow, default);
        Assert.NotEmpty(await app.Services.GetRequiredService<RoundPass>().RunAsync(tomorrow + Duration.FromDays(1), default));
        await app.Services.GetRequiredService<OccasionPass>().RunAsync(tomorrow, default);
        await app.Services.GetRequiredService<StatePass>().RunAsync(tomorrow, default);
    }

    /// <summary>The jars with a placement that leads nowhere.</summary>
    private Guid[] Hurt()
    {
        using SqliteConnection records = Open("records.db");
        return [.. Rows(records, "SELECT JarId FROM jar_placement WHERE PlaceId NOT IN (SELECT Id FROM place)")
            .Select(row => Guid.Parse((string)row[0]))];
    }

    private int Poison(string file)
    {
        using SqliteConnection connection = Open(file);
        Execute(connection, "PRAGMA foreign_keys = OFF");
        var tables = Rows(connection, "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' AND name NOT LIKE '\\_\\_%' "
            + "ESCAPE '\\' AND name NOT LIKE 'AspNet%' AND name <> 'DataProtectionKeys'")
            .Select(row => (string)row[0]).Except(SingleRows).ToList();
        return tables.Sum(table => Poison(connection, table));
    }

    /// <summary>What a column holds by the model of the records; the log's own columns say it by their type.</summary>
    private static Type? HeldBy(string table, string column) => Model.GetEntityTypes()
        .SelectMany(entity => entity.GetFlattenedProperties().Where(property => entity.GetTableName() == table && property.GetColumnName() == column))
        .Select(property => property.GetTypeMapping().Converter?.ProviderClrType ?? property.ClrType)
        .Select(type => Nullable.GetUnderlyingType(type) ?? type).FirstOrDefault();

    private static int Poison(SqliteConnection connection, string table)
    {
        var columns = Rows(connection, $"SELECT name, type, pk FROM pragma_table_info('{table}')")
            .Select(row => (Name: (string)row[0], Type: ((string)row[1]).ToUpperInvariant(), IsKey: (long)row[2] > 0)).ToList();
        string[] kept = [.. columns.Where(column => !column.IsKey).Select(column => column.Name)];
        int poisoned = 0;
        foreach (var column in columns.Where(column => !column.IsKey))
            foreach (string odd in Odd(column.Type, HeldBy(table, column.Name), !Model.GetEntityTypes()
                .Any(entity => entity.GetTableName() == table)))
            {
                string keys = string.Join(", ", columns.Select(each => each.IsKey ? NewKey(table, each.Name, each.Type, poisoned)
                    : each.Name == column.Name ? odd : Unique(table, each.Name)));
                try
                {
                    poisoned += Execute(connection, $"INSERT INTO \"{table}\"({string.Join(", ", columns.Select(each => $"\"{each.Name}\""))}) "
                        + $"SELECT {keys} FROM \"{table}\" LIMIT 1");
                }
                catch (SqliteException)
                {
                    // The table itself does not let such a value in.
                }
            }
        return poisoned;
    }

    /// <summary>Odd values of the kind that the column holds: what another process or a door could have written, not a torn page.</summary>
    private static IEnumerable<string> Odd(string type, Type? held, bool ofTheLog) => type switch
    {
        // Columns of a complex property are unknown to the model by their own name; none of them holds more than 32 bits.
        "INTEGER" when held is null && !ofTheLog => ["2147483647", "-2147483648", "-1"],
        _ when held == typeof(int) || held?.IsEnum == true => ["2147483647", "-2147483648", "-1"],
        _ when held == typeof(bool) => [],
        _ when held == typeof(Guid) => ["'00000000-0000-0000-0000-000000000000'"],
        "INTEGER" => ["9223372036854775807", "-9223372036854775808", "253402300799000", "-1"],
        "REAL" => ["1e308", "-1e308", "9e999"],
        "BLOB" => ["x''", "x'00'"],
        _ => ["''", "'{'", "'[]'", "char(0) || char(8238) || 'nobody'", "'00000000-0000-0000-0000-000000000000'"],
    };

    /// <summary>A key that no row has yet.</summary>
    private static string NewKey(string table, string column, string type, int number) => type switch
    {
        "INTEGER" => $"(SELECT count(*) + 100000 FROM \"{table}\")",
        "TEXT" when column is "Id" or "ObservationId" or "JarId" => $"'{Guid.NewGuid().ToString().ToUpperInvariant()}'",
        _ => $"\"{column}\" || '{number.ToString(CultureInfo.InvariantCulture)}'",
    };

    /// <summary>A column that must be unique gets another value; any other keeps its own.</summary>
    private static string Unique(string table, string column) => (table, column) switch
    {
        ("jar", "Number") or ("sensor", "Key") or ("reading", "seq") or ("observation_entry", "Seq") =>
            $"(SELECT count(*) + 100000 FROM \"{table}\")",
        ("sensor", "Slug") or ("notice", "Key") or ("told_occasion", "Key") or ("mqtt_credential", "User") =>
            $"\"{column}\" || (SELECT count(*) FROM \"{table}\")",
        _ => $"\"{column}\"",
    };

    private static IModel RecordsModel()
    {
        using var context = new RecordsContext(new DbContextOptionsBuilder<RecordsContext>().UseSqlite("Data Source=:memory:").Options);
        return context.Model;
    }

    private SqliteConnection Open(string file)
    {
        var connection = new SqliteConnection($"Data Source={Path.Combine(_folder, file)};Pooling=False");
        connection.Open();
        return connection;
    }

    private static int Execute(SqliteConnection connection, string sql)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        return command.ExecuteNonQuery();
    }

    private static List<object[]> Rows(SqliteConnection connection, string sql)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        using SqliteDataReader reader = command.ExecuteReader();
        var rows = new List<object[]>();
        while (reader.Read())
        {
            object[] values = new object[reader.FieldCount];
            reader.GetValues(values);
            rows.Add(values);
        }
        return rows;
    }
}
