using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.RoundAnswers;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Rounds;

/// <summary>Enters looks and sightings of former days from the week sheet; what somebody answered for before stays as it is.</summary>
[OpenToChildren]
public sealed class EnterWeekSheet(RoundFiling filing, IHouseholdBook households, TimeProvider clock)
{
    /// <param name="ticks">The boxes that were filled in.</param>
    /// <param name="mark">Who enters them.</param>
    /// <param name="cancellationToken">Gives up before anything is filed.</param>
    public async Task<AnswerOutcome> DoAsync(IReadOnlyCollection<WeekTick> ticks, EntryMark mark, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        return await filing.LooksAsync(mark, (_, kept) =>
        {
            var byNumber = kept.ToDictionary(jar => jar.Number);
            var looks = ticks.Distinct().Where(tick => byNumber.ContainsKey(tick.Number))
                .Select(tick => WeekLook.Of(byNumber[tick.Number], tick, household, mark, clock.GetUtcNow().ToInstant())).OfType<Observation>();
            return new AnswerOutcome([.. looks], [], []);
        }, cancellationToken);
    }
}
