using FermentWatch.Storage.Readings;

namespace FermentWatch.Storage.Tests.Readings;

/// <summary>Tests of a reading log of their own, new for each test.</summary>
public abstract class OpenedStore : IAsyncLifetime, IDisposable
{
    private readonly TemporaryFolder _folder = new();

    protected string DatabasePath => _folder.File("readings.db");

    protected ReadingStore Store { get; private set; } = null!;

    public Task InitializeAsync()
    {
        Store = ReadingStore.Open(DatabasePath);
        return Task.CompletedTask;
    }

    public async Task DisposeAsync() => await Store.DisposeAsync();

    public void Dispose()
    {
        _folder.Dispose();
        GC.SuppressFinalize(this);
    }

    protected async Task RestartAsync()
    {
        await DisposeAsync();
        await InitializeAsync();
    }
}
