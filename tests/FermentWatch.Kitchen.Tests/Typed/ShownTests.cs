using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Kitchen.Tests.Typed;

public class ShownTests
{
    private static readonly (string Field, string Value)[] Opened = [("name", "Number Nine"), ("morning round", "07:00"), ("week from", "Monday")];

    [Fact]
    public void Check_NothingChanged_IsNoRefusalHoweverTheBrowserEndsLines()
    {
        Assert.Null(Shown.Check("household", Shown.Write(Opened), Opened));
        Assert.Null(Shown.Check("household", Shown.Write(Opened).Replace("\n", "\r\n", StringComparison.Ordinal), Opened));
    }

    [Fact]
    public void Check_ChangedMeanwhile_SaysWhatAndWhatTheFormShowed() => Assert.Equal(
        "household: a form older than the record cannot be used. Somebody else saved meanwhile: morning round 06:30 (this form was opened with "
        + "07:00); "
        + "week from Sunday (this form was opened with Monday). Save again to have it as it stands here.",
        Shown.Check("household", Shown.Write(Opened), [("name", "Number Nine"), ("morning round", "06:30"), ("week from", "Sunday")])?.ToString());

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("name")]
    [InlineData("name\tone\tmore\nroof\tgreen")]
    public void Check_FormThatCarriesNothingOfIt_IsNoRefusal(string? shown) => Assert.Null(Shown.Check("household", shown, Opened));
}
