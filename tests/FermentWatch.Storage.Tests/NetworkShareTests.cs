namespace FermentWatch.Storage.Tests;

public sealed class NetworkShareTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("nfs4")]
    [InlineData("cifs")]
    [InlineData("smb3")]
    [InlineData("fuse.sshfs")]
    [InlineData("network")]
    public void Remark_OnAShare_SaysWhatMayHappenAndWhatToDo(string kind) =>
        Assert.StartsWith($"The databases lie on a network share (/mnt/nas, {kind}), where locks of files cannot be relied on:",
            NetworkShare.Remark("/mnt/nas", kind), StringComparison.Ordinal);

    [Theory]
    [InlineData("ext4")]
    [InlineData("btrfs")]
    [InlineData("overlay")]
    [InlineData("ntfs")]
    [InlineData("fuseblk")]
    public void Remark_OnADiskOfThisMachine_IsNone(string kind) => Assert.Null(NetworkShare.Remark("/var/lib/fermentwatch", kind));

    [Fact]
    public void Remark_OfTheFolderOfATest_IsNone() => Assert.Null(NetworkShare.Remark(_folder.Root));
}
