namespace FermentWatch.Storage;

/// <summary>Where the two databases are kept.</summary>
public sealed class StorageOptions
{
    /// <summary>
    /// The folder of readings.db and records.db; made when it is missing, for its owner only.
    /// A relative path is taken from where the service starts. Default: <c>data</c>.
    /// </summary>
    public string Folder { get; set; } = "data";

    internal string ReadingsPath => Path.Combine(Path.GetFullPath(Folder), "readings.db");

    internal string RecordsPath => Path.Combine(Path.GetFullPath(Folder), "records.db");

    /// <summary>Everything that is wrong with the settings, one line each; empty when they can be used.</summary>
    public IReadOnlyList<string> Errors()
    {
        if (string.IsNullOrWhiteSpace(Folder))
            return ["Storage:Folder is empty; a folder such as 'data' or '/var/lib/fermentwatch' would be right."];
        if (Folder.Contains('\0', StringComparison.Ordinal))
            return ["Storage:Folder holds a character that no path may have; a folder such as 'data' would be right."];
        return File.Exists(Folder) ? [$"Storage:Folder is '{Folder}', which is a file; a folder would be right."] : [];
    }
}
