namespace FermentWatch.Service.Settings;

/// <summary>Where the service keeps its databases.</summary>
public sealed class StorageOptions
{
    /// <summary>Folder of readings.db and records.db, an absolute path; made at the first start. Default: /var/lib/fermentwatch.</summary>
    public string Folder { get; set; } = "/var/lib/fermentwatch";

    /// <summary>Everything wrong with the settings: which, what came, what would be right.</summary>
    public IEnumerable<string> Errors()
    {
        if (!Path.IsPathFullyQualified(Folder))
            yield return $"Folder is '{Folder}'; an absolute path belongs here, like /var/lib/fermentwatch.";
        else if (File.Exists(Folder))
            yield return $"Folder is '{Folder}', which is a file; a folder belongs here.";
    }
}
