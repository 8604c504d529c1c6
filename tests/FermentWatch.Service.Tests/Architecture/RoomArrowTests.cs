using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace FermentWatch.Service.Tests.Architecture;

/// <summary>The arrows of the house: a room may lean only on the rooms named here.</summary>
public partial class RoomArrowTests
{
    private static readonly Dictionary<string, string[]> Allowed = new()
    {
        ["Kinetics"] = [],
        ["Kitchen"] = ["Kinetics"],
        ["Intake"] = ["Kitchen"],
        ["Storage"] = ["Kitchen"],
        ["Notices"] = ["Kitchen"],
        ["Export"] = ["Kitchen"],
        ["Acts"] = ["Kitchen"],
        ["Web"] = ["Acts"],
        ["Service"] = ["Kinetics", "Kitchen", "Intake", "Storage", "Notices", "Export", "Acts", "Web"],
    };

    private static readonly string[] HostPackages =
        ["Microsoft.Extensions", "Microsoft.AspNetCore", "Microsoft.EntityFrameworkCore", "Serilog", "MQTTnet"];

    public static TheoryData<string> Rooms()
    {
        var rooms = new TheoryData<string>();
        foreach (string folder in Directory.GetDirectories(Path.Combine(Root(), "src")))
            rooms.Add(Path.GetFileName(folder)["FermentWatch.".Length..]);
        return rooms;
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public void Room_LeansOnlyOnTheRoomsThePlanAllows(string room)
    {
        var leansOn = Items(room, "ProjectReference").Select(path => Path.GetFileNameWithoutExtension(path)["FermentWatch.".Length..]);
        Assert.Empty(leansOn.Except(Allowed[room]));
    }

    /// <summary>Whoever looks for the home of a thing finds every folder of a room in DEVELOPERS.md, with what it holds.</summary>
    [Theory]
    [MemberData(nameof(Rooms))]
    public void FoldersOfARoom_StandInTheListOfFolders(string room)
    {
        string[] lines = File.ReadAllLines(Path.Combine(Root(), "DEVELOPERS.md"));
        string list = string.Join('\n', lines.SkipWhile(line => line != "## Rooms").TakeWhile(line => line != "## The walks"));
        string[] folders = [.. Directory.GetDirectories(Path.Combine(Root(), "src", $"FermentWatch.{room}"))
            .Where(folder => Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories).Any())
            .Select(folder => Path.GetFileName(folder)).Except(["bin", "obj", "node_modules"])];
        Assert.Contains($"**{room}**", list, StringComparison.Ordinal);
        Assert.All(folders, folder => Assert.Contains($"`{folder}`", list, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Kinetics")]
    [InlineData("Kitchen")]
    public void ScienceAndRules_ReferenceNoHostPackage(string room)
    {
        var packages = Items(room, "PackageReference").ToList();
        Assert.DoesNotContain(packages, package => HostPackages.Any(package.StartsWith));
        Assert.DoesNotContain("FrameworkReference", File.ReadAllText(ProjectFile(room)), StringComparison.Ordinal);
        if (room == "Kinetics")
            Assert.Empty(packages);
    }

    /// <summary>What a folder of the kitchen leans on leans nowhere back on it, by however many steps.</summary>
    [Fact]
    public void FoldersOfTheKitchen_LeanOneWay()
    {
        string kitchen = Path.Combine(Root(), "src", "FermentWatch.Kitchen");
        var leansOn = Directory.GetDirectories(kitchen).Where(folder => Directory.EnumerateFiles(folder, "*.cs").Any()).ToDictionary(
            folder => Path.GetFileName(folder),
            folder => Directory.EnumerateFiles(folder, "*.cs")
                .SelectMany(file => Usings().Matches(File.ReadAllText(file)).Select(found => found.Groups["folder"].Value)).ToHashSet());
        Assert.True(leansOn.Count > 20, $"{leansOn.Count} folders");
        // Whatever leans on nothing that is left is taken away; a circle is what stays.
        while (leansOn.FirstOrDefault(each => !each.Value.Any(other => other != each.Key && leansOn.ContainsKey(other))).Key is { } free)
            leansOn.Remove(free);
        Assert.Empty(leansOn.Select(each => $"{each.Key} -> {string.Join(", ", each.Value.Where(leansOn.ContainsKey))}"));
    }

    /// <summary>Doors translate into acts and out of answers: none of them knows a book or the log.</summary>
    [Fact]
    public void WebCommandLineAndDemo_TouchNoBook()
    {
        string[] doors = [.. new[] { "FermentWatch.Web", Path.Combine("FermentWatch.Service", "CommandLine"),
            Path.Combine("FermentWatch.Service", "Demo") }
            .SelectMany(room => Directory.EnumerateFiles(Path.Combine(Root(), "src", room), "*", SearchOption.AllDirectories))
            .Where(file => file.EndsWith(".cs", StringComparison.Ordinal) || file.EndsWith(".razor", StringComparison.Ordinal))
            .Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal))];
        Assert.True(doors.Length > 200, $"{doors.Length} files");
        Assert.Empty(doors.SelectMany(file => Books().Matches(File.ReadAllText(file)).Select(found => $"{Path.GetFileName(file)}: {found.Value}")));
    }

    /// <summary>Pages are leant on by nobody: what the API and the command line share with them lives in acts or in the kitchen.</summary>
    [Fact]
    public void ApiAndCommandLine_LeanOnNoPage()
    {
        string[] others = [.. new[] { Path.Combine("FermentWatch.Web", "Api"), Path.Combine("FermentWatch.Service", "CommandLine") }
            .SelectMany(room => Directory.EnumerateFiles(Path.Combine(Root(), "src", room), "*.cs", SearchOption.AllDirectories))];
        Assert.True(others.Length > 50, $"{others.Length} files");
        Assert.Empty(others.Where(file => File.ReadAllText(file).Contains("FermentWatch.Web.Pages", StringComparison.Ordinal))
            .Select(Path.GetFileName));
    }

    [GeneratedRegex(@"\bI[A-Z]\w*Book\b|\bIReadingLog\b|\bIReadingHistory\b|\bIReadingIntake\b")]
    private static partial Regex Books();

    [GeneratedRegex(@"^using (static )?FermentWatch\.Kitchen\.(?<folder>\w+)", RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex Usings();

    private static IEnumerable<string> Items(string room, string kind) =>
        XDocument.Load(ProjectFile(room)).Descendants(kind).Select(item => item.Attribute("Include")!.Value);

    private static string ProjectFile(string room) =>
        Path.Combine(Root(), "src", $"FermentWatch.{room}", $"FermentWatch.{room}.csproj");

    internal static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "FermentWatch.sln")))
            folder = folder.Parent ?? throw new InvalidOperationException("FermentWatch.sln was not found above the tests.");
        return folder.FullName;
    }
}
