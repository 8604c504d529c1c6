using FermentWatch.Kitchen.Topics;

namespace FermentWatch.Kitchen.Tests.Topics;

public sealed class TopicFilterTests
{
    [Theory]
    [InlineData("fermentwatch/sensor/cellar", true)]
    [InlineData("fermentwatch/sensor/cellar/temperature", true)]
    [InlineData("fermentwatch/sensor/cellar/a/b", true)]
    [InlineData("fermentwatch/sensor/cellar-2/temperature", false)]
    [InlineData("fermentwatch/sensor/+/temperature", false)]
    [InlineData("fermentwatch/sensor", false)]
    public void Matches_FilterOfOneSensor_HoldsItsTopicsOnly(string topic, bool expected) =>
        Assert.Equal(expected, TopicFilter.Matches(topic, "fermentwatch/sensor/cellar/#"));

    [Theory]
    [InlineData("a", "+/#", true)]
    [InlineData("a/b", "a/+/#", true)]
    [InlineData("/a", "+/a", true)]
    [InlineData("a//b", "a/+/b", true)]
    [InlineData("$SYS/x", "#", false)]
    [InlineData("$SYS/x", "$SYS/#", true)]
    [InlineData("A", "a", false)]
    public void Matches_AnyFilter_FollowsMqtt(string topic, string filter, bool expected) =>
        Assert.Equal(expected, TopicFilter.Matches(topic, filter));

    [Theory]
    [InlineData("a/#", "a/#", true)]
    [InlineData("a/#", "a", true)]
    [InlineData("a/#", "a/+/c", true)]
    [InlineData("a/#", "#", false)]
    [InlineData("a/#", "+/b", false)]
    [InlineData("a/+/c", "a/b/c", true)]
    [InlineData("a/+/c", "a/+/c", true)]
    [InlineData("a/+/c", "a/#", false)]
    [InlineData("a/b", "a/+", false)]
    [InlineData("a/b", "a/b/c", false)]
    [InlineData("a/+", "a", false)]
    [InlineData("#", "$SYS/x", false)]
    [InlineData("#", "a/+/#", true)]
    public void Covers_TwoFilters_TellsWhetherTheInnerLiesWithin(string outer, string inner, bool expected) =>
        Assert.Equal(expected, TopicFilter.Covers(outer, inner));

    [Theory]
    [InlineData("", "empty")]
    [InlineData("a/#/b", "'#'")]
    [InlineData("a#", "'#'")]
    [InlineData("a/b+/c", "'+'")]
    [InlineData("a\0b", "NUL")]
    public void WhatIsWrong_BadFilter_NamesIt(string filter, string named) =>
        Assert.Contains(named, TopicFilter.WhatIsWrong(filter), StringComparison.Ordinal);

    [Theory]
    [InlineData("#")]
    [InlineData("+/+/#")]
    [InlineData("gateway/+/state")]
    public void WhatIsWrong_GoodFilter_IsNull(string filter) => Assert.Null(TopicFilter.WhatIsWrong(filter));
}
