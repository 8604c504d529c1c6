using NodaTime;

namespace FermentWatch.Kitchen.Occasions;

/// <summary>How long it has been beyond a limit, from quarter-hour means up to the present.</summary>
public static class WarmSpell
{
    /// <summary>Within this an excursion back, or nothing measured, does not end a spell: a window opened, a message lost.</summary>
    private const int GapQuarters = 4;

    /// <summary>How long the latest spell has lasted; zero where the last hour holds nothing beyond the limit.</summary>
    /// <param name="quarters">Means in Celsius, oldest first, the last one the latest closed quarter hour; null where nothing counted.</param>
    /// <param name="beyond">Whether a mean is beyond the limit.</param>
    public static Duration Length(IReadOnlyList<double?> quarters, Func<double, bool> beyond)
    {
        int first = quarters.Count, gap = 0;
        for (int i = quarters.Count - 1; i >= 0 && gap <= GapQuarters; i--)
        {
            if (quarters[i] is { } celsius && beyond(celsius))
            {
                first = i;
                gap = 0;
            }
            else
            {
                gap++;
            }
        }
        return Duration.FromMinutes(15 * (quarters.Count - first));
    }
}
