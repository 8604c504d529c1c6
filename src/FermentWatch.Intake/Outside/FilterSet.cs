namespace FermentWatch.Intake.Outside;

/// <summary>
/// Topic filters of which no two match the same topic: brokers may send a message once for each filter that matches, and a bare
/// number sent twice would be two readings. Filters that overlap are joined into one that holds both, and then some more.
/// </summary>
public static class FilterSet
{
    /// <summary>Filters that hold all topics of those given, in order, no two of them overlapping.</summary>
    public static IReadOnlyList<string> Disjoint(IEnumerable<string> filters)
    {
        var joined = new List<string[]>();
        foreach (string filter in filters.Order(StringComparer.Ordinal))
        {
            string[] next = filter.Split('/');
            // A joined filter may overlap one that was passed already, so that each is looked at again after a join.
            for (int i = 0; i < joined.Count;)
            {
                if (!Overlap(joined[i], next))
                {
                    i++;
                    continue;
                }
                next = Join(joined[i], next);
                joined.RemoveAt(i);
                i = 0;
            }
            joined.Add(next);
        }
        return [.. joined.Select(levels => string.Join('/', levels)).Order(StringComparer.Ordinal)];
    }

    private static bool Overlap(string[] a, string[] b)
    {
        for (int i = 0; ; i++)
        {
            string? one = i < a.Length ? a[i] : null, other = i < b.Length ? b[i] : null;
            if (one == "#" || other == "#" || (one is null && other is null))
                return true;
            if (one is null || other is null || (one != "+" && other != "+" && one != other))
                return false;
        }
    }

    private static string[] Join(string[] a, string[] b)
    {
        var levels = new List<string>();
        for (int i = 0; i < Math.Max(a.Length, b.Length); i++)
        {
            string? one = i < a.Length ? a[i] : null, other = i < b.Length ? b[i] : null;
            if (one is null or "#" || other is null or "#")
                return [.. levels, "#"];
            levels.Add(one == other ? one : "+");
        }
        return [.. levels];
    }
}
