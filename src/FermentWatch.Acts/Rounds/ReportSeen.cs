using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.RoundAnswers;

namespace FermentWatch.Acts.Rounds;

/// <summary>Reports what was seen at a jar.</summary>
[OpenToChildren]
public sealed class ReportSeen(RoundFiling filing)
{
    public Task<AnswerOutcome> DoAsync(int number, SightingKind kind, string? note, EntryMark mark, CancellationToken cancellationToken) =>
        filing.OneAsync(number, mark, (answering, jar) => answering.Seen(jar, kind, note), cancellationToken);
}
