using FermentWatch.Storage.Archives.Taking;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Storage.Backups;

/// <summary>Makes a backup the household of a folder. It is checked before anything is moved,
/// and what was there is put aside, not thrown away.</summary>
/// <param name="place">The folder of the household.</param>
public sealed class HouseholdRestore(StorageOptions place)
{
    private static readonly InstantPattern Aside = InstantPattern.CreateWithInvariantCulture("'before-restore-'uuuu-MM-dd'T'HHmmss'Z'");

    /// <summary>Restores a backup. A kill leaves what was there, or what was restored.</summary>
    /// <param name="backup">The folder with both files.</param>
    /// <param name="replace">Whether it may take the place of what is there.</param>
    /// <param name="now">For the name of the folder into which that is put.</param>
    /// <returns>The folder into which what was there was put; null where nothing was.</returns>
    /// <exception cref="DatabaseRefusedException">The backup is not whole, or of a newer version.</exception>
    /// <exception cref="IOException">A service runs there, something is there that was not to be replaced, or the disk refuses.</exception>
    public string? Take(string backup, bool replace, Instant now)
    {
        var from = new StorageOptions { Folder = Path.GetFullPath(backup) };
        using ServedFolder turn = ServedFolder.Take(place);
        PreparedHousehold.MoveIn(place);
        bool there = IsAnythingThere();
        if (there && !replace)
            throw new IOException($"{place.Folder} holds a household already: nothing was changed. Say --replace, and what is there is put aside; or "
                + "name another folder by Storage:Folder (FERMENTWATCH__STORAGE__FOLDER).");
        string? aside = there ? Aside.Format(now) : null;
        try
        {
            StorageOptions draft = PreparedHousehold.Begin(place);
            Copy(from.RecordsPath, draft.RecordsPath);
            Copy(from.ReadingsPath, draft.ReadingsPath);
            // What is checked is the copy, that is what will be used; a stick that may not be written is only read.
            PairCopy.Check(draft);
            OpenMark.Clear(draft);
            PreparedHousehold.Settle(place, aside);
        }
        finally
        {
            PreparedHousehold.GiveUp(place);
        }
        return aside is null ? null : Path.Combine(place.Folder, aside);
    }

    /// <summary>Copies a file, and the journal that one has which was copied by other means.</summary>
    private static void Copy(string from, string to)
    {
        foreach (string each in new[] { "", "-wal" })
            if (File.Exists(from + each))
                File.Copy(from + each, to + each);
            else if (each.Length == 0)
                throw new DatabaseRefusedException(from, "it is missing: a backup is a pair of files.");
    }

    /// <summary>What is damaged or half is something as well.</summary>
    private bool IsAnythingThere()
    {
        try
        {
            return DatabasePair.HoldsAnything(place);
        }
        catch (DatabaseRefusedException)
        {
            return true;
        }
    }
}
