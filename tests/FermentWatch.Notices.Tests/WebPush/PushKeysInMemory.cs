using FermentWatch.Kitchen.Notices;

namespace FermentWatch.Notices.Tests.WebPush;

/// <summary>Keeps the pair as long as it lives.</summary>
internal sealed class PushKeysInMemory : IPushKeyBook
{
    private PushKeyPair? _kept;

    public Task<PushKeyPair?> FindAsync(CancellationToken cancellationToken) => Task.FromResult(_kept);

    public Task<PushKeyPair> KeepAsync(PushKeyPair made, CancellationToken cancellationToken) => Task.FromResult(_kept ??= made);
}
