namespace FermentWatch.Storage;

/// <summary>
/// Files that only their owner may read, whatever the umask: password hashes, keys and what people wrote lie in them. SQLite gives its
/// journals the mode of their database.
/// </summary>
public static class PrivateFiles
{
    private const UnixFileMode OwnersFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>How to open one, alone, and to make it where it is missing.</summary>
    public static FileStreamOptions Options(FileMode mode, FileOptions options = FileOptions.None)
    {
        var made = new FileStreamOptions { Mode = mode, Access = FileAccess.ReadWrite, Share = FileShare.None, BufferSize = 1, Options = options };
        if (!OperatingSystem.IsWindows())
            made.UnixCreateMode = OwnersFile;
        return made;
    }

    /// <summary>Makes an empty file, which SQLite then fills.</summary>
    internal static void CreateEmpty(string path)
    {
        using var file = new FileStream(path, Options(FileMode.CreateNew));
    }

    /// <summary>Makes a folder, and those above it where they are missing.</summary>
    internal static void CreateFolder(string folder)
    {
        if (OperatingSystem.IsWindows())
            Directory.CreateDirectory(folder);
        else
            Directory.CreateDirectory(folder, OwnersFile | UnixFileMode.UserExecute);
    }

    /// <summary>The copies that were kept of a database before it was brought up to date.</summary>
    internal static string[] CopiesOf(string path) =>
        Directory.GetFiles(Path.GetDirectoryName(Path.GetFullPath(path))!, Path.GetFileName(path) + ".before-*");

    /// <summary>Takes the rights of others on files that an earlier version made; those of another owner stay as they are.</summary>
    internal static void Keep(IEnumerable<string> files)
    {
        if (OperatingSystem.IsWindows())
            return;
        foreach (string file in files)
        {
            try
            {
                if (File.Exists(file) && (File.GetUnixFileMode(file) & ~OwnersFile) != 0)
                    File.SetUnixFileMode(file, OwnersFile);
            }
            catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
            {
                // Not ours to change, or gone in the meantime: SQLite says whether it can be used.
            }
        }
    }
}
