namespace FermentWatch.Intake.Tests.Cases;

/// <summary>The folders of golden payloads. Each is one case; adding a case is adding a folder.</summary>
public static class CaseFolder
{
    public static string Root { get; } = Find("tests/cases");

    public static IEnumerable<string> Names() =>
        Directory.GetDirectories(Root).Order(StringComparer.Ordinal).Select(folder => Path.GetFileName(folder)!);

    /// <summary>A folder or file of the source tree, looked for upwards from where the tests run.</summary>
    public static string Find(string relative)
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            string candidate = Path.Combine(folder.FullName, relative);
            if (File.Exists(Path.Combine(folder.FullName, "FermentWatch.sln")) && Path.Exists(candidate))
                return candidate;
        }
        throw new DirectoryNotFoundException($"{relative} is not to be found above {AppContext.BaseDirectory}.");
    }
}
