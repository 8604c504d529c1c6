using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.RoundAnswers;

namespace FermentWatch.Acts.Rounds;

/// <summary>Says what was done about a jar: trouble seen to, or left standing.</summary>
public sealed class SettleTrouble(RoundFiling filing)
{
    public Task<AnswerOutcome> DoAsync(int number, HandlingKind kind, EntryMark mark, CancellationToken cancellationToken) => filing.OneAsync(
        number, mark, (answering, jar) => ChildRules.Settling(mark.Role) is { } refusal ? new AnswerOutcome([], [], [refusal]) : answering.Handled(jar, kind), cancellationToken);
}
