using FermentWatch.Storage;

namespace FermentWatch.Service.Tests.Settings;

public class StorageOptionsTests
{
    [Fact]
    public void Defaults_AreTheFolderOfTheService()
    {
        var options = new StorageOptions();
        Assert.Equal("/var/lib/fermentwatch", options.Folder);
        Assert.Empty(options.Errors());
    }

    [Fact]
    public void Errors_RelativeFolderOrFile_SayWhatBelongsThere()
    {
        string file = Path.GetTempFileName();
        string[] errors = [.. new StorageOptions { Folder = "data" }.Errors(), .. new StorageOptions { Folder = file }.Errors()];
        File.Delete(file);
        Assert.Equal(
            [
                "Folder is 'data'; an absolute path belongs here, like /var/lib/fermentwatch.",
                $"Folder is '{file}', which is a file; a folder belongs here.",
            ], errors);
    }
}
