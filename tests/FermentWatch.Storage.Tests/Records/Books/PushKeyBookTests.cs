using FermentWatch.Kitchen.Notices;

namespace FermentWatch.Storage.Tests.Records.Books;

public sealed class PushKeyBookTests : OpenedRecords
{
    private IPushKeyBook Book => Get<IPushKeyBook>();

    [Fact]
    public async Task FindAsync_NoneYet_IsNull() => Assert.Null(await Book.FindAsync(default));

    [Fact]
    public async Task KeepAsync_ManyAtOnce_OneStaysAndEverybodyGetsIt()
    {
        PushKeyPair[] kept = await Task.WhenAll(Enumerable.Range(1, 12)
            .Select(number => Task.Run(() => Book.KeepAsync(Pair((byte)number), default))));
        Assert.Single(kept.Select(pair => pair.PublicKey[1]).Distinct());
        Assert.Equivalent(kept[0], await Book.FindAsync(default), strict: true);
    }

    [Fact]
    public async Task KeepAsync_AfterARestart_TheSamePairIsThereAndANewOneIsNotTaken()
    {
        PushKeyPair first = await Book.KeepAsync(Pair(1), default);
        await RestartAsync();
        Assert.Equivalent(first, await Book.FindAsync(default), strict: true);
        Assert.Equivalent(first, await Book.KeepAsync(Pair(2), default), strict: true);
    }

    private static PushKeyPair Pair(byte filling) => new()
    {
        PublicKey = [4, .. Enumerable.Repeat(filling, 64)], PrivateKey = [.. Enumerable.Repeat(filling, 32)], MadeAt = Noon,
    };
}
