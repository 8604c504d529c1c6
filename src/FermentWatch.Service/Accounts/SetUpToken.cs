using System.Security.Cryptography;
using System.Text;
using FermentWatch.Storage;
using FermentWatch.Storage.Records;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace FermentWatch.Service.Accounts;

/// <summary>
/// The one-time token by which the owner sets a password at first start. It lives as long as nobody can sign in: kept beside the
/// databases, for their owner only, so that a restart does not change the address, and deleted when the first account is made.
/// </summary>
public sealed class SetUpToken(IServiceScopeFactory scopes, StorageOptions storage) : IDisposable
{
    private const int TokenBytes = 10;
    private readonly string _file = Path.Combine(Path.GetFullPath(storage.Folder), "set-up-token");
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
    /// <returns>What making it gave, or null where the token opens nothing (any more).</returns>
    public async Task<IdentityResult?> UseAsync(string? token, Func<Task<IdentityResult>> make, CancellationToken cancellationToken)
    {
        await _oneAtATime.WaitAsync(cancellationToken);
        try
        {
            if (!await OpensAsync(token, cancellationToken))
                return null;
            IdentityResult made = await make();
            if (made.Succeeded)
                File.Delete(_file);
            return made;
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
                await stream.WriteAsync(Encoding.ASCII.GetBytes(Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(TokenBytes))), cancellationToken);
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
        var accounts = scope.ServiceProvider.GetRequiredService<UserManager<Account>>();
        return !await accounts.Users.AnyAsync(account => account.PasswordHash != null, cancellationToken);
    }
}
