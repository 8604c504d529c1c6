using FermentWatch.Storage.Archives.Taking;

namespace FermentWatch.Storage;

/// <summary>Where the two databases are kept.</summary>
public sealed class StorageOptions
{
    /// <summary>
    /// Folder of readings.db and records.db, an absolute path; made when it is missing, for its owner only.
    /// Default: /var/lib/fermentwatch.
    /// </summary>
    public string Folder { get; set; } = "/var/lib/fermentwatch";

    internal string ReadingsPath => Path.Combine(Folder, "readings.db");

    internal string RecordsPath => Path.Combine(Folder, "records.db");

    /// <summary>Whether there are records in the folder, or such as only have to be moved in. Nothing is opened or made.</summary>
    public bool HasHousehold => File.Exists(RecordsPath) || PreparedHousehold.Waits(this);

    /// <summary>Everything wrong with the settings: which, what came, what would be right.</summary>
    public IEnumerable<string> Errors()
    {
        if (!Path.IsPathFullyQualified(Folder) || Folder.Contains('\0', StringComparison.Ordinal))
            yield return $"Folder is '{Folder}'; an absolute path belongs here, like /var/lib/fermentwatch.";
        else if (File.Exists(Folder))
            yield return $"Folder is '{Folder}', which is a file; a folder belongs here.";
    }
}
