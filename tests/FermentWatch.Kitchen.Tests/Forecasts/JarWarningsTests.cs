using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.AcidLines;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Guides;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Tests.Words;
using NodaTime;

namespace FermentWatch.Kitchen.Tests.Forecasts;

public class JarWarningsTests
{
    [Theory]
    [InlineData(34.9, null)]
    [InlineData(35, "35 °C (95 °F) or more is expected in it tomorrow. The bacteria that sour it hardly keep up there, others thrive. Move it "
        + "somewhere cooler now, and measure the pH.")]
    public void Of_HotDayAhead_IsToldFrom35On(double celsius, string? expected) =>
        Assert.Equal(expected is null ? []
            : [expected], JarWarnings.Of(SampleJars.Of("cabbage"), Course((0, 45), (3.5, 22), (4.6, celsius)), On(day: 3.6)));

    [Fact]
    public void Of_HotDayThatIsOver_IsNotTold() => Assert.Empty(JarWarnings.Of(SampleJars.Of("cabbage"), Course((0, 36), (3.5, 22)), On(day: 3.6)));

    [Fact]
    public void Of_ChilliMash_WarnsUnlessItWasStarted()
    {
        Jar mash = SampleJars.Of("red chilli");
        Assert.Contains("4.83 after 15 days", Assert.Single(JarWarnings.Of(mash, null, On(1))), StringComparison.Ordinal);
        mash.Starter = new Starter(3, 0.05, 1.2);
        Assert.Empty(JarWarnings.Of(mash, null, On(1)));
    }

    [Fact]
    public void ForAPolicy_Pink_NamesBothSourcesAndWhatThisHouseholdDoes()
    {
        MoreSigns Pink(MouldPolicy policy) => MoreSigns.For(policy).Single(sign => sign.Sign == "Pink");
        Assert.All(Enum.GetValues<MouldPolicy>(), policy =>
            Assert.All(["Oregon State", "Ask Extension", "This household"], words =>
            Assert.Contains(words, Pink(policy).Advice, StringComparison.Ordinal)));
        Assert.EndsWith("stricter advice: throw it out.", Pink(MouldPolicy.ThrowOut).Advice, StringComparison.Ordinal);
        Assert.EndsWith("measure the pH and look daily.", Pink(MouldPolicy.SkimSmallPatches).Advice, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("histamine", "MAO inhibitors", "FDA")]
    [InlineData("clean-hands", "galvanized", "Nebraska")]
    [InlineData("clean-hands", "glaze", "FDA")]
    [InlineData("early-nitrite", "beet, radish, daikon, celery, fennel", "EFSA 2008")]
    public void Cautions_ThatHaveASource_NameIt(string key, string words, string source)
    {
        Caution caution = Cautions.PuttingUp.Concat(Cautions.Deciding).First(each => each.Key == key);
        Assert.Contains(words, caution.Text, StringComparison.Ordinal);
        Assert.Contains(source, caution.Source, StringComparison.Ordinal);
    }

    [Fact]
    public void Cautions_WithoutASource_AreTheseAndNoMore() => Assert.Equal(["glass-pressure", "oil-no-seal"],
        Cautions.PuttingUp.Concat(Cautions.Deciding).Where(each => each.Source == "common practice, no source").Select(each => each.Key).Distinct()
            .Order());

    [Fact]
    public void Strips_AreToldByTheirRange() => Assert.Contains("from about 3 to 5", LineRule.WhatStripsTell, StringComparison.Ordinal);

    private static ForecastCalendar On(double day) => new(SampleJars.Packed, 60, SampleJars.Packed + Duration.FromDays(day), SampleJars.Vienna);

    private static Forecast Course(params (double Day, double Celsius)[] course)
    {
        var none = new Quantiles(0, 0, 0);
        return new Forecast
        {
            ModelVersion = "test", AcidLine = default, Ph4 = default, CentreAcidLine = default, CentrePh4 = default, Target = null, Flagged = [],
                Remarks = [],
            Course = [.. course.Select(each => new CoursePoint(each.Day, each.Celsius, none, none, 0, none))],
        };
    }
}
