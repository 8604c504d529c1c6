using FermentWatch.Storage;
using FermentWatch.Storage.Backups;
using NodaTime;

namespace FermentWatch.Service.Loops;

/// <summary>
/// Keeps a backup of each day in the folder of the settings. Whether one is due is told by those that lie there: a restart makes none too many,
/// and a folder that was emptied gets one at once.
/// </summary>
/// <param name="household">What is copied.</param>
/// <param name="options">Where to and how many; with a folder.</param>
public sealed class DailyBackup(StorageOptions household, BackupOptions options)
{
    private static readonly Duration Between = Duration.FromDays(1), UntilTriedAgain = Duration.FromHours(1);
    private static readonly TimeSpan UntilNextSign = TimeSpan.FromMinutes(1);

    private readonly BackupFolder _backups = new(options.Folder!);

    private (Instant At, Exception Trouble)? _failed;

    /// <summary>Makes one where the newest is a day old, and throws away the oldest. What fails is said again at once, and
    /// tried again each hour.</summary>
    /// <param name="now">The present.</param>
    /// <param name="goesOn">Told each minute that it goes on: years of readings take long on a slow disk.</param>
    /// <param name="cancellationToken">Waits no longer; what is half done is thrown away the next time.</param>
    public Task RunAsync(Instant now, Action goesOn, CancellationToken cancellationToken)
    {
        if (_failed is { } failed && now >= failed.At && now - failed.At < UntilTriedAgain)
            throw new IOException(failed.Trouble.Message, failed.Trouble);
        // One of a day to come was made by a clock that was wrong, and does not hold up those to come.
        if (_backups.All().Any(backup => backup.At <= now && now - backup.At < Between))
            return Task.CompletedTask;
        return WaitAsync(Task.Run(() => Make(now), cancellationToken), goesOn, cancellationToken);
    }

    private static async Task WaitAsync(Task work, Action goesOn, CancellationToken cancellationToken)
    {
        for (; ; goesOn())
        {
            try
            {
                await work.WaitAsync(UntilNextSign, cancellationToken);
                return;
            }
            catch (TimeoutException) when (!work.IsCompleted)
            {
            }
        }
    }

    private void Make(Instant now)
    {
        try
        {
            _backups.Make(household, now);
            _backups.Keep(options.Keep);
            _failed = null;
        }
        catch (Exception trouble)
        {
            _failed = (now, trouble);
            throw;
        }
    }
}
