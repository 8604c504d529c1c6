namespace FermentWatch.Kitchen.Notices;

/// <summary>Where the one key pair for push is kept.</summary>
public interface IPushKeyBook
{
    /// <summary>The pair that is kept, or null.</summary>
    Task<PushKeyPair?> FindAsync(CancellationToken cancellationToken);

    /// <summary>Keeps a pair where there is none yet, and gives the one that is kept: of several made at once the first stays.</summary>
    Task<PushKeyPair> KeepAsync(PushKeyPair made, CancellationToken cancellationToken);
}
