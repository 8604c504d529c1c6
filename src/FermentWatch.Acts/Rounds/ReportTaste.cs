using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Kitchen.Rounds;

namespace FermentWatch.Acts.Rounds;

/// <summary>Says how a jar tastes. An adult tastes first.</summary>
[OpenToChildren]
public sealed class ReportTaste(RoundFiling filing)
{
    public Task<AnswerOutcome> DoAsync(int number, TasteVerdict verdict, EntryMark mark, CancellationToken cancellationToken) => filing.OneAsync(
        number, mark, (answering, jar) => ChildRules.Tasting(mark.Role, jar) is { } refusal ? new AnswerOutcome([], [], [refusal]) : answering.Tasted(jar, verdict), cancellationToken);
}
