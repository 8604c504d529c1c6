using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Kitchen.Rounds;

namespace FermentWatch.Acts.Rounds;

/// <summary>Says of jars of today's round that all is well.</summary>
[OpenToChildren, OpenToRecorders]
public sealed class SayAllWell(RoundFiling filing, RoundReader rounds)
{
    /// <summary>All well for a shelf, except these numbers.</summary>
    /// <param name="shelf">Id of the place; null for every shelf.</param>
    /// <param name="except">Numbers that are left open.</param>
    /// <param name="opened">Whether the jars were opened.</param>
    /// <param name="mark">Identity of the answer and who gives it.</param>
    /// <param name="cancellationToken">Gives up before anything is filed.</param>
    public async Task<AnswerOutcome> DoAsync(Guid? shelf, IReadOnlySet<int> except, bool opened, EntryMark mark, CancellationToken cancellationToken)
    {
        RoundSheet sheet = (await rounds.TodayAsync(cancellationToken)).Sheet;
        var wanted = sheet.Shelves.Where(each => shelf is null || each.Place.Id == shelf)
            .SelectMany(each => each.Jars).Select(each => each.Jar.Number).Where(number => !except.Contains(number)).ToHashSet();
        return await filing.LooksAsync(mark, (answering, kept) =>
            answering.AllWell(kept.Where(jar => wanted.Contains(jar.Number)), opened), cancellationToken);
    }

    /// <summary>All well for the jars that stood on a page, each opened or looked at through the glass.</summary>
    /// <param name="numbers">Numbers of the jars.</param>
    /// <param name="opened">Numbers of those of them that were opened.</param>
    /// <param name="mark">Identity of the answer and who gives it.</param>
    /// <param name="cancellationToken">Gives up before anything is filed.</param>
    public Task<AnswerOutcome> DoAsync(IReadOnlySet<int> numbers, IReadOnlySet<int> opened, EntryMark mark, CancellationToken cancellationToken) =>
        filing.LooksAsync(mark, (answering, kept) =>
        {
            var asked = kept.Where(jar => numbers.Contains(jar.Number)).ToLookup(jar => opened.Contains(jar.Number));
            AnswerOutcome glass = answering.AllWell(asked[false], opened: false), open = answering.AllWell(asked[true], opened: true);
            return new AnswerOutcome([.. glass.Observations, .. open.Observations], [.. glass.Known, .. open.Known], []);
        }, cancellationToken);
}
