using System.Globalization;

namespace FermentWatch.Kitchen.Rounds;

/// <summary>Jar numbers as they are said aloud: <c>3, 5 to 8, 12</c>.</summary>
public static class NumberList
{
    /// <summary>Runs of three and more are drawn together.</summary>
    public static string Say(IEnumerable<int> numbers)
    {
        var runs = new List<(int First, int Last)>();
        foreach (int number in numbers.Distinct().Order())
        {
            if (runs.Count > 0 && runs[^1].Last == number - 1)
                runs[^1] = (runs[^1].First, number);
            else
                runs.Add((number, number));
        }
        return string.Join(", ", runs.SelectMany(run => Parts(run.First, run.Last)));
    }

    private static IEnumerable<string> Parts(int first, int last) => (last - first) switch
    {
        0 => [Text(first)],
        1 => [Text(first), Text(last)],
        _ => [$"{Text(first)} to {Text(last)}"],
    };

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
