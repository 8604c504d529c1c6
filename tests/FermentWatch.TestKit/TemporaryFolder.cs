namespace FermentWatch.TestKit;

/// <summary>A folder that is gone with the test.</summary>
public sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("fermentwatch-test-").FullName;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
