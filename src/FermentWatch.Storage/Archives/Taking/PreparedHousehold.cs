namespace FermentWatch.Storage.Archives.Taking;

/// <summary>
/// A household that is built beside the place where it will stand. It counts from the moment at which its folder gets its second name: a
/// kill before it leaves nothing, a kill after it leaves all, since whoever opens the place next moves in what is ready.
/// </summary>
internal static class PreparedHousehold
{
    // In what is ready: the folder into which what it takes the place of is put.
    private const string AsideNote = "aside";

    private static readonly string[] Companions = ["-journal", "-wal", "-shm"];

    /// <summary>Where it is built: the same files, in a folder that a kill may leave behind and the next try throws away.</summary>
    internal static StorageOptions Begin(StorageOptions place)
    {
        string draft = Draft(place);
        if (Directory.Exists(draft))
            Directory.Delete(draft, recursive: true);
        PrivateFiles.CreateFolder(draft);
        return new StorageOptions { Folder = draft };
    }

    /// <summary>Throws away what was built.</summary>
    internal static void GiveUp(StorageOptions place)
    {
        if (Directory.Exists(Draft(place)))
            Directory.Delete(Draft(place), recursive: true);
    }

    /// <summary>What was built is whole, closed and checked: from here on it is the household.</summary>
    /// <param name="place">Where.</param>
    /// <param name="aside">Name of a folder there into which what it takes the place of is put; null where nothing was entered in that.</param>
    internal static void Settle(StorageOptions place, string? aside = null)
    {
        if (aside is not null)
            File.WriteAllText(Path.Combine(Draft(place), AsideNote), aside);
        Directory.Move(Draft(place), Ready(place));
        MoveIn(place);
    }

    /// <summary>Whether a kill came between the second name and the last move.</summary>
    internal static bool Waits(StorageOptions place) => Directory.Exists(Ready(place));

    /// <summary>Moves in what is ready and not there yet; nothing where nothing is.</summary>
    internal static void MoveIn(StorageOptions place)
    {
        if (!Waits(place))
            return;
        using FileStream turn = DatabaseFile.TakeTurn(place.RecordsPath);
        var ready = new StorageOptions { Folder = Ready(place) };
        string note = Path.Combine(ready.Folder, AsideNote);
        string? aside = File.Exists(note) ? Path.Combine(place.Folder, File.ReadAllText(note)) : null;
        // The records come last: without them nobody is at home.
        foreach ((string from, string to) in new[] { (ready.ReadingsPath, place.ReadingsPath), (ready.RecordsPath, place.RecordsPath) })
        {
            if (!File.Exists(from))
                continue;
            Clear(to, aside);
            File.Move(from, to);
        }
        Directory.Delete(Ready(place), recursive: true);
    }

    /// <summary>Puts a file and its journals aside, or throws them away.</summary>
    private static void Clear(string path, string? aside)
    {
        if (aside is not null && !Directory.Exists(aside))
            PrivateFiles.CreateFolder(aside);
        foreach (string each in Companions.Select(companion => path + companion).Append(path).Where(File.Exists))
            if (aside is null)
                File.Delete(each);
            else
                File.Move(each, Path.Combine(aside, Path.GetFileName(each)));
    }

    private static string Draft(StorageOptions place) => Path.Combine(place.Folder, "import.draft");

    private static string Ready(StorageOptions place) => Path.Combine(place.Folder, "import.ready");
}
