using FermentWatch.Service.Settings;


namespace FermentWatch.Service.Tests.Settings;

public class EnvironmentExampleTests
{
    /// <summary>Every setting stands in the example with its default, and nothing else does.</summary>
    [Fact]
    public void Example_OfTheEnvironment_HoldsEverySettingWithItsDefault()
    {
        string[] lines = [.. File.ReadAllLines(Path.Combine(Root(), "deploy", "fermentwatch.env.example"))
            .Where(line => line.StartsWith("#FERMENTWATCH__", StringComparison.Ordinal))];
        var places = new SettingsPlaces { Environment = new Dictionary<string, string>() };
        (var configuration, SettingsReading reading) = ServiceSettings.Gather(places);
        string[] settings = [.. reading.Settings.Sections
            .SelectMany(section => EffectiveSettings.Of(configuration, section.Name, section.Options))
            .Select(setting => $"#FERMENTWATCH__{setting.Key.Replace(":", "__", StringComparison.Ordinal).ToUpperInvariant()}={setting.Value}")];
        Assert.Equal(settings.Order(), lines.Order());
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "FermentWatch.sln")))
            folder = folder.Parent ?? throw new InvalidOperationException("FermentWatch.sln was not found above the tests.");
        return folder.FullName;
    }
}
