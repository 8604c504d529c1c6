using FermentWatch.Acts.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.RoundAnswers;
using NodaTime;

namespace FermentWatch.Acts.Rounds;

/// <summary>
/// Answers for the jars of a board, which may have been looked at yesterday on a phone: what stood on it counts, and what became of it is
/// read from the record.
/// </summary>
[OpenToChildren, OpenToRecorders]
public sealed class AnswerBoard(SayAllWell allWell, ReportSeen report, IJarBook jars, HouseholdReader household)
{
    /// <summary>What a tick may be, in one tap; anything else is said on a page of its own.</summary>
    public static readonly IReadOnlyList<SightingKind> Usual = [SightingKind.Film, SightingKind.PiecesUp, SightingKind.BrineLow];

    /// <summary>Files it.</summary>
    /// <param name="request">What stood on the board, and what was ticked.</param>
    /// <param name="mark">Identity of the answer and who gives it.</param>
    /// <param name="cancellationToken">Gives up before anything is filed.</param>
    public async Task<BoardAnswered> DoAsync(BoardRequest request, EntryMark mark, CancellationToken cancellationToken)
    {
        HashSet<int> ticked = [.. request.Ticked.Where(request.Shown.Contains)], well = [.. request.Shown.Except(ticked)];
        await allWell.DoAsync(well, request.Opened, mark, cancellationToken);
        List<(int Number, SightingKind Kind)> seen = await ReportAsync(request.Seen, ticked, mark, cancellationToken);
        (var here, Instant now) = await household.NowAsync(cancellationToken);
        LocalDate date = mark.At(now).InZone(here.Zone).Date;
        ILookup<Found, int> found = InTheRecord(well, mark.Id, date, await jars.KeptAsync(cancellationToken), here.Zone);
        return new BoardAnswered([.. found[Found.Written]], [.. found[Found.AnsweredBefore]], [.. found[Found.Nothing]], seen,
            [.. ticked.Where(number => seen.TrueForAll(each => each.Number != number))]);
    }

    /// <summary>
    /// What was ticked and said with the tick, as far as it was taken: what was refused, or sent before with something else, is asked on
    /// the page of that jar.
    /// </summary>
    private async Task<List<(int Number, SightingKind Kind)>> ReportAsync(IReadOnlyDictionary<int, SightingKind> said, HashSet<int> ticked,
        EntryMark mark,
        CancellationToken cancellationToken)
    {
        var seen = new List<(int, SightingKind)>();
        foreach (int number in ticked)
            if (said.TryGetValue(number, out SightingKind kind) && Usual.Contains(kind)
                && await report.DoAsync(number, kind, null, mark, cancellationToken) is { Refusals.Count: 0, Asked: null })
                seen.Add((number, kind));
        return seen;
    }

    /// <summary>What stands in the record of the jars of which all was well.</summary>
    private static ILookup<Found, int> InTheRecord(HashSet<int> well, Guid form, LocalDate date, IReadOnlyList<Jar> kept, DateTimeZone zone) =>
        well.ToLookup(number =>
    {
        Jar? jar = kept.FirstOrDefault(each => each.Number == number);
        var onThatDate = jar?.Standing.Where(each => each is Look or Sighting && each.At.InZone(zone).Date == date).ToList() ?? [];
        return onThatDate.Exists(each => each.Id == AnswerId.Of(form, jar!.Id)) ? Found.Written : onThatDate.Count > 0 ? Found.AnsweredBefore
            : Found.Nothing;
    });

    private enum Found
    {
        Written,
        AnsweredBefore,
        Nothing,
    }
}

/// <summary>A board as it was sent, by numbers of jars.</summary>
/// <param name="Shown">Those that stood on it.</param>
/// <param name="Ticked">Those at which something was seen.</param>
/// <param name="Opened">Those that were opened.</param>
/// <param name="Seen">What was seen, where it was said with the tick.</param>
public sealed record BoardRequest(
    IReadOnlySet<int> Shown, IReadOnlySet<int> Ticked, IReadOnlySet<int> Opened, IReadOnlyDictionary<int, SightingKind> Seen);

/// <summary>What became of the jars of a board, by number.</summary>
/// <param name="Well">Looked at by this answer.</param>
/// <param name="Known">Answered for by somebody before.</param>
/// <param name="Left">Not written down: no longer in the round, or the same page was sent on another day.</param>
/// <param name="Seen">What was seen at those that were ticked.</param>
/// <param name="ToSay">Ticked, and still to be said what was seen.</param>
public sealed record BoardAnswered(IReadOnlyList<int> Well, IReadOnlyList<int> Known, IReadOnlyList<int> Left,
    IReadOnlyList<(int Number, SightingKind Kind)> Seen, IReadOnlyList<int> ToSay);
