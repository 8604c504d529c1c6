namespace FermentWatch.Service.Demo;

/// <summary>A folder that is deleted with everything in it when it is disposed of.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    /// <summary>Its path.</summary>
    public string Path { get; } = Directory.CreateTempSubdirectory("fermentwatch-demo-").FullName;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
