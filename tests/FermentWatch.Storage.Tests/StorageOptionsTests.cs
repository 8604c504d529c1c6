using Microsoft.Extensions.DependencyInjection;

namespace FermentWatch.Storage.Tests;

public class StorageOptionsTests
{
    [Fact]
    public void Defaults_AreUsable()
    {
        Assert.Equal("/var/lib/fermentwatch", new StorageOptions().Folder);
        Assert.Empty(new StorageOptions().Errors());
    }

    [Fact]
    public void AddFermentWatchStorage_NoFolder_SaysWhatWouldBeRight()
    {
        var wrong = Assert.Throws<ArgumentException>(() => new ServiceCollection().AddFermentWatchStorage(new StorageOptions { Folder = " " }));
        Assert.StartsWith("Folder is ' '; an absolute path belongs here, like /var/lib/fermentwatch.", wrong.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Errors_FileInTheWay_SaysSo()
    {
        string file = typeof(StorageOptionsTests).Assembly.Location;
        Assert.Equal([$"Folder is '{file}', which is a file; a folder belongs here."], new StorageOptions { Folder = file }.Errors());
    }
}
