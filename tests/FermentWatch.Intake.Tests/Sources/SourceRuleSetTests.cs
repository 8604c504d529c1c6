using FermentWatch.Intake.Sources;
using FermentWatch.Intake.Tests.Doubles;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using Microsoft.Extensions.Time.Testing;

namespace FermentWatch.Intake.Tests.Sources;

public sealed class SourceRuleSetTests
{
    [Fact]
    public async Task ForAsync_RuleAddedByAnotherProcess_IsUsedWithinASecond()
    {
        var time = new FakeTimeProvider();
        var book = new MemorySourceRuleBook();
        var rules = new SourceRuleSet(book, time);
        Assert.Empty(await rules.ForAsync("gateway/cellar", CancellationToken.None));

        await book.AddAsync(Rule("gateway/{device}"), CancellationToken.None);
        Assert.Empty(await rules.ForAsync("gateway/cellar", CancellationToken.None));
        time.Advance(TimeSpan.FromSeconds(1));

        Assert.Single(await rules.ForAsync("gateway/cellar", CancellationToken.None));
    }

    [Fact]
    public async Task ForAsync_ManyMessages_ReadTheRulesOnceInTenSeconds()
    {
        var time = new FakeTimeProvider();
        var book = new MemorySourceRuleBook();
        await book.AddAsync(Rule("gateway/{device}"), CancellationToken.None);
        var rules = new SourceRuleSet(book, time);

        for (int i = 0; i < 100; i++)
        {
            await rules.ForAsync("gateway/cellar", CancellationToken.None);
            time.Advance(TimeSpan.FromMilliseconds(99));
        }

        Assert.Equal(1, book.Queries);
    }

    [Fact]
    public async Task ForAsync_AWrongRuleAmongGoodOnes_CostsOnlyItselfAndIsNamed()
    {
        var book = new MemorySourceRuleBook();
        await book.AddAsync(Rule("gateway/#/x"), CancellationToken.None);
        await book.AddAsync(Rule("gateway/{device}"), CancellationToken.None);
        var rules = new SourceRuleSet(book, new FakeTimeProvider());

        Assert.Single(await rules.ForAsync("gateway/cellar", CancellationToken.None));
        Assert.StartsWith("The rule for gateway/#/x is not used.", Assert.Single(rules.Wrong));
        Assert.Equal(["gateway/+"], await rules.FiltersAsync(CancellationToken.None));
    }

    private static SourceRule Rule(string filter) => new()
    {
        Id = Guid.CreateVersion7(), TopicFilter = filter, Payload = SourcePayload.Json, Quantity = Quantity.Temperature,
        ValuePointer = "/temperature", Unit = "Cel", SensorSlug = filter.Contains('{', StringComparison.Ordinal) ? null : "cellar",
    };
}
