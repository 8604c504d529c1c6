using Microsoft.Extensions.DependencyInjection;

namespace FermentWatch.Storage.Tests;

public class StorageOptionsTests
{
    [Fact]
    public void Defaults_AreUsable()
    {
        Assert.Equal("data", new StorageOptions().Folder);
        Assert.Empty(new StorageOptions().Errors());
    }

    [Fact]
    public void AddFermentWatchStorage_NoFolder_SaysWhatWouldBeRight()
    {
        var wrong = Assert.Throws<ArgumentException>(() => new ServiceCollection().AddFermentWatchStorage(new StorageOptions { Folder = " " }));
        Assert.StartsWith("Storage:Folder is empty; a folder such as 'data' or '/var/lib/fermentwatch' would be right.", wrong.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Errors_FileInTheWay_SaysSo()
    {
        string file = typeof(StorageOptionsTests).Assembly.Location;
        Assert.Equal([$"Storage:Folder is '{file}', which is a file; a folder would be right."], new StorageOptions { Folder = file }.Errors());
    }
}
