using FermentWatch.Service.Tests.Architecture;

namespace FermentWatch.Service.Tests.Pages;

/// <summary>Orange is for a rising pH, mould or slime, pressure and brine that is gone: whatever else goes wrong is said calmly.</summary>
public class OrangeTests
{
    [Fact]
    public void Boxes_OnPagesThatAreNotAboutAJarInTrouble_AreCalm() =>
        Assert.Equal(["ComponentsPage.razor"], Directory.EnumerateFiles(Path.Combine(RoomArrowTests.Root(), "src", "FermentWatch.Web"), "*.razor",
            SearchOption.AllDirectories).Where(file => File.ReadAllText(file).Contains("class=\"now-box\"", StringComparison.Ordinal))
            .Select(Path.GetFileName));
}
