using FermentWatch.Kitchen.Guides;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Observations;

namespace FermentWatch.Kitchen.Tests.Guides;

public class SightingGuidesTests
{
    public static TheoryData<SightingKind> Kinds() => [.. Enum.GetValues<SightingKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Of_EverySighting_HasThreeLinesASourceAndACaution(SightingKind kind)
    {
        SightingGuide guide = SightingGuides.Of(kind);
        Assert.Equal(3, guide.Now.Count);
        Assert.NotEmpty(guide.Sources);
        Assert.NotEmpty(guide.Caution);
        Assert.All(guide.Now, line => Assert.True(line.Length <= 110, line));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Of_EverySighting_NeverCallsAJarSafeNorTastesToDecide(SightingKind kind)
    {
        SightingGuide guide = SightingGuides.Of(kind);
        string text = string.Join(' ', [guide.Name, .. guide.Now, guide.Discard, guide.Caution, .. guide.Sources]);
        Assert.DoesNotContain("is safe", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("taste", text.Replace("not taste", "", StringComparison.OrdinalIgnoreCase), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Of_MouldByDefault_ThrowsTheJarOutAndWhoCannotTellNeverSkims()
    {
        Assert.Equal(SightingGuides.Of(SightingKind.FuzzOrUnsure), SightingGuides.Of(SightingKind.FuzzOrUnsure, default));
        SightingGuide skimmed = SightingGuides.Of(SightingKind.FuzzOrUnsure, MouldPolicy.SkimSmallPatches);
        Assert.Contains("If you cannot tell what it is, or there is much of it, throw the jar out.", skimmed.Now[0], StringComparison.Ordinal);
        Assert.StartsWith("Do not taste it.", skimmed.Now[0], StringComparison.Ordinal);
        Assert.Equal(3, skimmed.Now.Count);
        Assert.Contains(skimmed.Sources, source => source.Contains("NDSU", StringComparison.Ordinal));
    }
}
