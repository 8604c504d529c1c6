namespace FermentWatch.Storage;

/// <summary>
/// Keeps a second service from serving the same folder, by a lock of the operating system: a kill ends it too. Verbs beside the
/// running service need no such turn.
/// </summary>
public sealed class ServedFolder : IDisposable
{
    private readonly FileStream _lock;

    private ServedFolder(FileStream held) => _lock = held;

    /// <summary>Takes the folder, and makes it where it is missing.</summary>
    /// <exception cref="IOException">Another service has it, or the folder cannot be written.</exception>
    public static ServedFolder Take(StorageOptions options)
    {
        if (!Directory.Exists(options.Folder))
            PrivateFiles.CreateFolder(options.Folder);
        string file = Path.Combine(options.Folder, "serving.lock");
        try
        {
            return new ServedFolder(new FileStream(file, PrivateFiles.Options(FileMode.OpenOrCreate)));
        }
        catch (IOException trouble) when (trouble.GetType() == typeof(IOException) && File.Exists(file))
        {
            throw new IOException(
                $"{options.Folder} is served by another FermentWatch already. Stop that one first, or give this one a Storage:Folder of its own.",
                trouble);
        }
    }

    public void Dispose() => _lock.Dispose();
}
