using System.Globalization;

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
        FileStream held;
        try
        {
            held = new FileStream(file, PrivateFiles.Options(FileMode.OpenOrCreate));
        }
        catch (IOException) when (Holder(file) is { } holder)
        {
            throw new IOException($"{options.Folder} is served by another FermentWatch already (process {holder}). Stop that one first, or give this one a Storage:Folder of its own.");
        }
        held.SetLength(0);
        held.Write(System.Text.Encoding.ASCII.GetBytes(Environment.ProcessId.ToString(CultureInfo.InvariantCulture)));
        held.Flush();
        return new ServedFolder(held);
    }

    public void Dispose() => _lock.Dispose();

    /// <summary>The process that wrote its number into the lock; null where it cannot be read, and the trouble is another one.</summary>
    private static string? Holder(string file)
    {
        try
        {
            using var reader = new StreamReader(new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite));
            return reader.ReadToEnd() is { Length: > 0 } holder ? holder : "unknown";
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
