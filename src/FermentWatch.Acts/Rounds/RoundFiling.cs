using System.Globalization;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Health;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.RoundAnswers;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Acts.Rounds;

/// <summary>
/// Files answers to the round, one at a time: two people at once must not both find a jar not yet looked at. After each the forecasts
/// are renewed or the loops told.
/// </summary>
public sealed class RoundFiling(IHouseholdBook households, IJarBook jars, IForecastRenewal renewal, WrittenDown written, TimeProvider clock)
    : IDisposable
{
    private readonly SemaphoreSlim _turn = new(1, 1);

    /// <summary>An answer about one jar; its forecast is renewed, as one jar's news may be an input of it.</summary>
    public async Task<AnswerOutcome> OneAsync(int number, EntryMark mark, Func<Answering, Jar, AnswerOutcome> answer,
        CancellationToken cancellationToken)
    {
        if (await jars.FindAsync(number, cancellationToken) is null)
            return new AnswerOutcome([], [],
                [new Refusal("jar", number.ToString(CultureInfo.InvariantCulture), "the number of a jar would be right")]);
        AnswerOutcome outcome = await FileAsync(mark, async answering =>
            answer(answering, (await jars.FindAsync(number, cancellationToken))!), cancellationToken);
        await renewal.RunAsync(number, cancellationToken);
        return outcome;
    }

    /// <summary>Looks at kept jars; looks are no input of a forecast.</summary>
    public async Task<AnswerOutcome> LooksAsync(EntryMark mark, Func<Answering, IReadOnlyList<Jar>, AnswerOutcome> answer,
        CancellationToken cancellationToken)
    {
        AnswerOutcome outcome = await FileAsync(mark, async answering =>
            answer(answering, await jars.KeptAsync(cancellationToken)), cancellationToken);
        written.SayFacts();
        return outcome;
    }

    public void Dispose() => _turn.Dispose();

    private async Task<AnswerOutcome> FileAsync(EntryMark mark, Func<Answering, Task<AnswerOutcome>> answer, CancellationToken cancellationToken)
    {
        Household household = await households.ReadAsync(cancellationToken);
        await _turn.WaitAsync(cancellationToken);
        try
        {
            Instant now = clock.GetUtcNow().ToInstant();
            AnswerOutcome outcome = await answer(new Answering(mark.Id, mark.Who, mark.At(now), now, household, mark.Role, mark.Again));
            if (outcome is { Replaces: { } wrong, Observations: [var right] })
                await jars.CorrectAsync(wrong, now, mark.By, right, cancellationToken);
            else if (outcome.Observations.Count > 0)
                await jars.ObserveAsync(outcome.Observations, cancellationToken);
            return outcome;
        }
        finally
        {
            _turn.Release();
        }
    }
}
