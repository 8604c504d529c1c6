namespace FermentWatch.Storage.Tests;

public class DiskRoomTests
{
    [Theory]
    [InlineData(0, true, "The disk is full.")]
    [InlineData(8_388_607, true, "The disk is full.")]
    [InlineData(8_388_608, false, "8 MB are left")]
    [InlineData(209_715_199, false, "199 MB are left")]
    public void Of_LittleRoom_SaysSoAndWhatToDo(long bytes, bool isFull, string begins)
    {
        (string words, bool full) = DiskRoom.Of(bytes)!.Value;
        Assert.Equal(isFull, full);
        Assert.StartsWith(begins, words, StringComparison.Ordinal);
        Assert.Contains("Make room", words, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_Room_SaysNothing() => Assert.Null(DiskRoom.Of(209_715_200));

    [Fact]
    public void Read_FolderOfTheDatabases_IsOnADiskWhoseRoomIsKnown() =>
        Assert.Equal(DiskRoom.Of(new DriveInfo(Path.GetTempPath()).AvailableFreeSpace),
        new DiskRoom(new StorageOptions { Folder = Path.GetTempPath() }).Read());
}
