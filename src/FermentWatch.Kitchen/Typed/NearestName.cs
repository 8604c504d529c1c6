namespace FermentWatch.Kitchen.Typed;

/// <summary>Finds what somebody probably meant by a name that is not known.</summary>
public static class NearestName
{
    /// <summary>
    /// The known name nearest by edit distance (Levenshtein 1966), whatever the case; null where nothing is nearer than about
    /// half of its letters.
    /// </summary>
    public static string? Of(string typed, IEnumerable<string> known)
    {
        var (name, distance) = known.Select(name => (name, Distance(typed, name))).OrderBy(each => each.Item2).FirstOrDefault();
        return name is not null && distance * 2 <= Math.Max(typed.Length, name.Length) + 1 ? name : null;
    }

    private static int Distance(string typed, string name)
    {
        int[] row = [.. Enumerable.Range(0, name.Length + 1)];
        for (int i = 1; i <= typed.Length; i++)
        {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= name.Length; j++)
            {
                int replaced = diagonal + (char.ToUpperInvariant(typed[i - 1]) == char.ToUpperInvariant(name[j - 1]) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(replaced, 1 + Math.Min(row[j], row[j - 1]));
            }
        }
        return row[^1];
    }
}
