using System.Globalization;
using FermentWatch.Acts.Jars;

namespace FermentWatch.Web.Pages.Jars;

/// <summary>Which jars somebody looks for: by the number on the tape, or by what is in it, its name or its shelf.</summary>
/// <param name="Words">What was typed; null where nothing was.</param>
internal sealed record JarSearch(string? Words)
{
    public static JarSearch For(string? typed) => new(string.IsNullOrWhiteSpace(typed) ? null : typed.Trim());

    public IReadOnlyList<JarView> Among(IReadOnlyList<JarView> jars) => Words is null ? jars : [.. jars.Where(Matches)];

    private bool Matches(JarView view) => int.TryParse(Words, NumberStyles.None, CultureInfo.InvariantCulture, out int number)
        ? view.Jar.Number == number
        : view.Jar.Portions.Select(portion => portion.Produce).Append(view.Jar.Name).Append(view.Place.Name)
            .Any(text => text.Contains(Words!, StringComparison.OrdinalIgnoreCase));
}
