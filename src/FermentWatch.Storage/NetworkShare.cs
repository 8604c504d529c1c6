namespace FermentWatch.Storage;

/// <summary>Warns of databases on a network share: SQLite's locks and its journal in shared memory are not reliable there (SQLite, "Write-Ahead
/// Logging", and "How To Corrupt An SQLite Database File", section 2).</summary>
internal static class NetworkShare
{
    private static readonly string[] Kinds = ["nfs", "cifs", "smb", "9p", "afs", "ceph", "ncpfs", "fuse.sshfs", "fuse.glusterfs", "davfs"];

    /// <summary>What to say of a folder; null where it lies on a disk of this machine, or nobody can tell.</summary>
    internal static string? Remark(string folder)
    {
        try
        {
            var drive = new DriveInfo(Path.GetFullPath(folder));
            return Remark(folder, drive.DriveType == DriveType.Network ? "network" : drive.DriveFormat);
        }
        catch (Exception unknown) when (unknown is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return null;
        }
    }

    /// <summary>The same for a kind of file system, by the name that the system gives it.</summary>
    internal static string? Remark(string folder, string kind) =>
        kind != "network" && !Kinds.Any(each => kind.StartsWith(each, StringComparison.OrdinalIgnoreCase)) ? null
            : $"The databases lie on a network share ({folder}, {kind}), where locks of files cannot be relied on: two programs may write at "
                + "once and damage them. Stop the service, move records.db and readings.db to a disk of this machine, and name its folder by "
                + "Storage:Folder; backups may be kept on a share.";
}
