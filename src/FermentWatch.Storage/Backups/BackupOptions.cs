namespace FermentWatch.Storage.Backups;

/// <summary>Whether and where a copy of both databases is kept each day.</summary>
public sealed class BackupOptions
{
    /// <summary>The most copies that may be kept.</summary>
    public const int MostKept = 1000;

    /// <summary>A folder, an absolute path, best on another disk; null, the default: no copies are made.</summary>
    public string? Folder { get; set; }

    /// <summary>How many copies are kept, 1 to 1,000; the oldest go first. Default: 7.</summary>
    public int Keep { get; set; } = 7;

    /// <summary>Everything wrong with the settings: which, what came, what would be right.</summary>
    public IEnumerable<string> Errors()
    {
        if (Folder is not null && (!Path.IsPathFullyQualified(Folder) || Folder.Contains('\0', StringComparison.Ordinal)))
            yield return $"Folder is '{Folder}'; an absolute path belongs here, like /mnt/stick/fermentwatch.";
        else if (File.Exists(Folder))
            yield return $"Folder is '{Folder}', which is a file; a folder belongs here.";
        if (Keep is < 1 or > MostKept)
            yield return $"Keep is {Keep}; a number from 1 to {MostKept} belongs here.";
    }
}
