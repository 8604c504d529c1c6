using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.RoundAnswers;

namespace FermentWatch.Acts.Rounds;

/// <summary>Reports what was seen at a jar.</summary>
[OpenToChildren, OpenToRecorders]
public sealed class ReportSeen(RoundFiling filing)
{
    public Task<AnswerOutcome> DoAsync(int number, SightingKind kind, string? note, EntryMark mark, CancellationToken cancellationToken) =>
        filing.OneAsync(number, mark, (answering, jar) => answering.Seen(jar, kind, note), cancellationToken);
}

/// <summary>Says how a jar tastes. An adult tastes first.</summary>
[OpenToChildren, OpenToRecorders]
public sealed class ReportTaste(RoundFiling filing)
{
    public Task<AnswerOutcome> DoAsync(int number, TasteVerdict verdict, EntryMark mark, CancellationToken cancellationToken) => filing.OneAsync(
        number, mark, (answering, jar) =>
            ChildRules.Tasting(mark.Role, jar) is { } refusal ? new AnswerOutcome([], [], [refusal]) : answering.Tasted(jar, verdict),
            cancellationToken);
}

/// <summary>Says what was done about a jar: trouble seen to, or left standing.</summary>
[OpenToRecorders]
public sealed class SettleTrouble(RoundFiling filing)
{
    public Task<AnswerOutcome> DoAsync(int number, HandlingKind kind, EntryMark mark, CancellationToken cancellationToken) => filing.OneAsync(
        number, mark, (answering, jar) =>
            ChildRules.Settling(mark.Role) is { } refusal ? new AnswerOutcome([], [], [refusal]) : answering.Handled(jar, kind), cancellationToken);
}
