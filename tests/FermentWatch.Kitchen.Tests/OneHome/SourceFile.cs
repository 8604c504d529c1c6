using System.Text.RegularExpressions;

namespace FermentWatch.Kitchen.Tests.OneHome;

/// <summary>A file of the product as far as it is no comment: code, texts and pages.</summary>
/// <param name="Name">File name without folders, which change more often than it does.</param>
/// <param name="Text">What it says.</param>
internal sealed partial record SourceFile(string Name, string Text)
{
    /// <summary>Every source file and page of the product, but what is generated.</summary>
    public static IReadOnlyList<SourceFile> All { get; } =
    [
        .. Directory.EnumerateFiles(Path.Combine(Root(), "src"), "*", SearchOption.AllDirectories)
            .Where(path => Path.GetExtension(path) is ".cs" or ".razor")
            .Where(path => !path.Split(Path.DirectorySeparatorChar).Any(folder => folder is "obj" or "bin" or "Migrations"))
            .Order(StringComparer.Ordinal).Select(path => Of(Path.GetFileName(path), File.ReadAllText(path))),
    ];

    /// <summary>A file of which only the text is known.</summary>
    public static SourceFile Of(string name, string text) =>
        new(name, string.Join('\n', PageComment().Replace(text, "").Split('\n').Select(WithoutComment)));

    /// <summary>Which of the words it says, whole and in any case, in their order. The longest is meant: napa cabbage is no cabbage.</summary>
    public IReadOnlyList<string> Says(IReadOnlyCollection<string> words)
    {
        string any = string.Join('|', words.OrderByDescending(word => word.Length).Select(Regex.Escape));
        var said = Regex.Matches(Text, $@"(?<![\w-])(?:{any})(?![\w-])", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)
            .Select(match => match.Value).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return [.. words.Where(said.Contains)];
    }

    /// <summary>Two slashes within a text in quotes begin no comment.</summary>
    private static string WithoutComment(string line)
    {
        bool quoted = false;
        for (int i = 0; i < line.Length; i++)
        {
            if (quoted && line[i] == '\\')
                i++;
            else if (line[i] == '"')
                quoted = !quoted;
            else if (!quoted && line.AsSpan(i).StartsWith("//"))
                return line[..i];
        }
        return line;
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "FermentWatch.sln")))
            folder = folder.Parent ?? throw new InvalidOperationException("FermentWatch.sln was not found above the tests.");
        return folder.FullName;
    }

    [GeneratedRegex(@"@\*.*?\*@", RegexOptions.Singleline)]
    private static partial Regex PageComment();
}
