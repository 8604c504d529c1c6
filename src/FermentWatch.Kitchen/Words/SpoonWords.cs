using System.Globalization;

namespace FermentWatch.Kitchen.Words;

/// <summary>Spoons as spoons are: quarters of a tablespoon, below one quarters of a teaspoon, of which three are a tablespoon.</summary>
public static class SpoonWords
{
    private static readonly string[] Quarters = ["", "1/4", "1/2", "3/4"];

    /// <summary><c>3 1/2 tablespoons</c>, <c>1 tablespoon</c>, <c>1 1/4 teaspoons</c>.</summary>
    public static string Of(double tablespoons)
    {
        bool tea = tablespoons < 0.875;
        int quarters = (int)Math.Max(1, Math.Round(4 * (tea ? 3 * tablespoons : tablespoons)));
        string number = $"{(quarters >= 4 ? (quarters / 4).ToString(CultureInfo.InvariantCulture) : "")} {Quarters[quarters % 4]}".Trim();
        return $"{number} {(tea ? "teaspoon" : "tablespoon")}{(quarters > 4 ? "s" : "")}";
    }
}
