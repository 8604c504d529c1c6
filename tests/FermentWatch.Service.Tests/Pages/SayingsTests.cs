using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;
using System.Text.RegularExpressions;

namespace FermentWatch.Service.Tests.Pages;

/// <summary>Nothing here declares food safe: held on every text the programs carry, whatever page, command or answer it ends up in.</summary>
public partial class SayingsTests
{
    [Theory]
    [InlineData("FermentWatch.Kinetics.dll", "cabbage")]
    [InlineData("FermentWatch.Kitchen.dll", "not measured")]
    [InlineData("FermentWatch.Intake.dll", "fermentwatch/sensor/")]
    [InlineData("FermentWatch.Storage.dll", "readings.db")]
    [InlineData("FermentWatch.Notices.dll", "application/json")]
    [InlineData("FermentWatch.Export.dll", " answered ")]
    [InlineData("FermentWatch.Acts.dll", "somebody of that name is there already")]
    [InlineData("FermentWatch.Web.dll", "Where it stands")]
    [InlineData("FermentWatch.Service.dll", "Told to stop before the service was up.")]
    public void EveryText_OfAProgram_CallsNothingSafe(string program, string known)
    {
        List<string> texts = Texts(Path.Combine(AppContext.BaseDirectory, program));
        Assert.Contains(texts, text => text.Contains(known, StringComparison.Ordinal));
        Assert.DoesNotContain(texts, text => Safe().IsMatch(text));
    }

    private static List<string> Texts(string path)
    {
        using var file = new PEReader(File.OpenRead(path));
        MetadataReader reader = file.GetMetadataReader();
        var texts = new List<string>();
        for (UserStringHandle text = MetadataTokens.UserStringHandle(1); !text.IsNil; text = reader.GetNextHandle(text))
            texts.Add(reader.GetUserString(text));
        return texts;
    }

    [GeneratedRegex(@"\b(un)?safe(ly)?\b", RegexOptions.IgnoreCase)]
    private static partial Regex Safe();
}
