using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Storage.Backups;

/// <summary>One backup: a folder with both files, called after the moment of which it is.</summary>
/// <param name="Folder">Its path.</param>
/// <param name="At">The moment.</param>
public sealed record Backup(string Folder, Instant At)
{
    /// <summary>Both files together, bytes.</summary>
    public long Bytes => BytesOf(new StorageOptions { Folder = Folder });

    internal static long BytesOf(StorageOptions pair) => new[] { pair.RecordsPath, pair.ReadingsPath }.Sum(path => new FileInfo(path).Length);
}

/// <summary>The folder in which backups are kept. A backup is there whole and checked, or not at all.</summary>
/// <param name="folder">Where; made when it is missing.</param>
public sealed class BackupFolder(string folder)
{
    private const string Draft = ".draft";

    private static readonly InstantPattern Name = InstantPattern.CreateWithInvariantCulture("'fermentwatch-'uuuu-MM-dd'T'HHmmss'Z'");

    /// <summary>All that are kept, the oldest first. None where there is no such folder.</summary>
    public IReadOnlyList<Backup> All() => !Directory.Exists(folder) ? []
        : [.. Directory.GetDirectories(folder).Select(Read).OfType<Backup>().OrderBy(backup => backup.At)];

    /// <summary>Copies a household and checks the copy; the service may be at work.</summary>
    /// <param name="household">Where the household is.</param>
    /// <param name="now">The moment it is called after.</param>
    /// <exception cref="IOException">There is no household, no room, or another backup is being made.</exception>
    /// <exception cref="DatabaseRefusedException">The copy is not whole, since the files are not: it is thrown away.</exception>
    public Backup Make(StorageOptions household, Instant now)
    {
        if (!File.Exists(household.RecordsPath) || !File.Exists(household.ReadingsPath))
            throw new IOException($"{household.Folder} holds no household: records.db and readings.db are not both there.");
        if (!Directory.Exists(folder))
            PrivateFiles.CreateFolder(folder);
        using FileStream turn = DatabaseFile.TakeTurn(Path.Combine(folder, "backup"));
        ThrowAwayDrafts();
        RefuseWithoutRoom(household);
        var made = new Backup(Path.Combine(folder, Name.Format(now)), now);
        var draft = new StorageOptions { Folder = made.Folder + Draft };
        PrivateFiles.CreateFolder(draft.Folder);
        try
        {
            PairCopy.Make(household, draft);
            PairCopy.Check(draft);
            OpenMark.Clear(draft);
            Directory.Move(draft.Folder, made.Folder);
        }
        finally
        {
            ThrowAwayDrafts();
        }
        return made;
    }

    /// <summary>Keeps the newest, and throws the others away one by one, the oldest first. Gives how many went.</summary>
    /// <param name="count">How many are kept, at least 1.</param>
    public int Keep(int count)
    {
        IReadOnlyList<Backup> old = [.. All().SkipLast(Math.Max(1, count))];
        foreach (Backup backup in old)
            // Under its other name it counts no more: a kill leaves a whole one or none.
            Directory.Move(backup.Folder, backup.Folder + Draft);
        ThrowAwayDrafts();
        return old.Count;
    }

    private static Backup? Read(string path) => Name.Parse(Path.GetFileName(path)) is { Success: true, Value: var at } ? new Backup(path, at) : null;

    private void ThrowAwayDrafts()
    {
        foreach (string draft in Directory.GetDirectories(folder, "fermentwatch-*" + Draft))
            Directory.Delete(draft, recursive: true);
    }

    private void RefuseWithoutRoom(StorageOptions household)
    {
        long needed = Backup.BytesOf(household);
        long free = new DriveInfo(Path.GetFullPath(folder)).AvailableFreeSpace;
        if (free < needed)
            throw new IOException(string.Create(CultureInfo.InvariantCulture, $"The backup needs {needed >> 20} MB and {free >> 20} MB are free on "
                + $"the disk of {folder}. Make room there, keep fewer, or name a folder on another disk."));
    }
}
