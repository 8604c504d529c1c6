using System.Security.Cryptography;
using System.Text;
using FermentWatch.Acts.Members;
using FermentWatch.Kinetics;

namespace FermentWatch.Web.Accounts;

/// <summary>
/// The one-time token by which the owner sets a password at first start. It lives as long as nobody can sign in: kept beside the
/// databases, for their owner only, so that a restart does not change the address, and deleted when the first account is made.
/// </summary>
public sealed class SetUpToken(IServiceScopeFactory scopes, RecordsFolder records) : IDisposable
{
    private const int TokenBytes = 10;
    private readonly string _file = Path.Combine(records.Path, "set-up-token");
    private readonly SemaphoreSlim _oneAtATime = new(1);

    /// <summary>The path of the set-up page with its token; null once somebody can sign in.</summary>
    public async Task<string?> PathAsync(CancellationToken cancellationToken) =>
        await IsOpenAsync(cancellationToken) ? $"/set-up/{await KeptAsync(cancellationToken)}" : null;

    /// <summary>Whether a token opens the set-up page now.</summary>
    public async Task<bool> OpensAsync(string? token, CancellationToken cancellationToken) =>
        await IsOpenAsync(cancellationToken) && Same(token ?? "", await KeptAsync(cancellationToken));

    /// <summary>Makes the owner's account, unless somebody was faster.</summary>
    /// <param name="token">The token of the page.</param>
    /// <param name="make">Makes the account.</param>
    /// <param name="cancellationToken">Ends the waiting.</param>
    /// <returns>What was wrong, or nothing where the account was made; null where the token opens nothing (any more).</returns>
    public async Task<IReadOnlyList<Refusal>?> UseAsync(string? token, Func<Task<IReadOnlyList<Refusal>>> make, CancellationToken cancellationToken)
    {
        await _oneAtATime.WaitAsync(cancellationToken);
        try
        {
            if (!await OpensAsync(token, cancellationToken))
                return null;
            IReadOnlyList<Refusal> refusals = await make();
            if (refusals.Count == 0)
                File.Delete(_file);
            return refusals;
        }
        finally
        {
            _oneAtATime.Release();
        }
    }

    public void Dispose() => _oneAtATime.Dispose();

    private async Task<string> KeptAsync(CancellationToken cancellationToken)
    {
        if (!File.Exists(_file))
        {
            string draft = $"{_file}.{Guid.NewGuid():N}";
            await using (var stream = new FileStream(draft, OwnerOnly()))
                await stream.WriteAsync(Encoding.ASCII.GetBytes(Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(TokenBytes))),
                    cancellationToken);
            TryMove(draft);
        }
        return (await File.ReadAllTextAsync(_file, cancellationToken)).Trim();
    }

    private static bool Same(string came, string kept) =>
        CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(came), Encoding.UTF8.GetBytes(kept));

    private static FileStreamOptions OwnerOnly()
    {
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        return options;
    }

    /// <summary>The first draft stands; whoever asks at the same moment reads that one.</summary>
    private void TryMove(string draft)
    {
        try
        {
            File.Move(draft, _file, overwrite: false);
        }
        catch (IOException) when (File.Exists(_file))
        {
            File.Delete(draft);
        }
    }

    private async Task<bool> IsOpenAsync(CancellationToken cancellationToken)
    {
        await using AsyncServiceScope scope = scopes.CreateAsyncScope();
        return !await scope.ServiceProvider.GetRequiredService<AccountReader>().AnybodyAsync(cancellationToken);
    }
}

/// <summary>The folder in which the household's records lie.</summary>
/// <param name="Path">Its whole path.</param>
public sealed record RecordsFolder(string Path);
