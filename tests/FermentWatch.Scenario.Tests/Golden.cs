namespace FermentWatch.Scenario.Tests;

/// <summary>Golden texts under tests/scenario. All differences are told together; FERMENTWATCH_APPROVE=1 writes them anew.</summary>
internal sealed class Golden
{
    private static readonly bool Approve = Environment.GetEnvironmentVariable("FERMENTWATCH_APPROVE") == "1";

    private readonly List<string> _differences = [];

    /// <summary>The folder of the scenario.</summary>
    public static string Folder { get; } = Find();

    /// <summary>Holds a text against its file.</summary>
    public void Hold(string name, string text)
    {
        string path = Path.Combine(Folder, name);
        if (Approve)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, text);
        }
        else if (!File.Exists(path))
            _differences.Add($"{name}: not approved yet");
        else if (File.ReadAllText(path) is var approved && approved != text)
            _differences.Add($"{name}:\n--- approved\n{approved}--- now\n{text}");
    }

    /// <summary>Fails with every difference.</summary>
    public void Settle() => Assert.True(_differences.Count == 0, string.Join('\n', _differences));

    private static string Find()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "FermentWatch.sln")))
            folder = folder.Parent ?? throw new InvalidOperationException("FermentWatch.sln was not found above the tests.");
        return Path.Combine(folder.FullName, "tests", "scenario");
    }
}
