using CsCheck;
using FermentWatch.Intake.Outside;
using FermentWatch.Kitchen.Topics;

namespace FermentWatch.Intake.Tests.Outside;

public sealed class FilterSetTests
{
    private static readonly Gen<string> _level = Gen.Int[0, 2].Select(i => "abc"[i].ToString());

    private static readonly Gen<string> _filter = Gen.Select(
        Gen.OneOf(_level, Gen.Const("+")).Array[1, 4], Gen.Bool, (levels, open) => string.Join('/', open ? [.. levels, "#"] : levels));

    [Fact]
    public void Disjoint_FiltersWithinOthers_AreLeftOut() =>
        Assert.Equal(
            ["a/+/c", "b/#", "x"],
            FilterSet.Disjoint(["b/1", "a/1/c", "b/#", "a/+/c", "b/+/d", "x", "x"]));

    [Fact]
    public void Disjoint_FiltersThatOverlap_AreJoined() =>
        Assert.Equal(["+/+/#", "other"], FilterSet.Disjoint(["+/cellar/#", "gateway/+/+", "other"]));

    [Fact]
    public void Disjoint_AnyFilters_MatchEveryTopicOfThoseGivenExactlyOnce() =>
        Gen.Select(_filter.Array[1, 6], _level.Array[1, 5]).Sample((filters, levels) =>
        {
            string topic = string.Join('/', levels);
            int matching = FilterSet.Disjoint(filters).Count(filter => TopicFilter.Matches(topic, filter));

            Assert.InRange(matching, filters.Any(filter => TopicFilter.Matches(topic, filter)) ? 1 : 0, 1);
        });
}
