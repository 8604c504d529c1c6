using FermentWatch.Acts;
using FermentWatch.Acts.Rounds;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.RoundAnswers;
using FermentWatch.Web.Accounts;
using FermentWatch.Web.Gates;
using Microsoft.AspNetCore.Mvc;
using NodaTime;
using NodaTime.Extensions;

namespace FermentWatch.Web.Pages.Rounds;

/// <summary>
/// What the button of a board comes to. It has an address of its own: the board may have been looked at yesterday, on a phone, and its
/// shelf be empty by now. What stood on the page counts, and what is said of it afterwards is read from the record.
/// </summary>
internal static class BoardTap
{
    /// <summary>Where the buttons of boards lead.</summary>
    public const string Path = "/round/answer";

    /// <summary>What a tick may be, in one tap; anything else is said on a page of its own.</summary>
    public static readonly IReadOnlyList<SightingKind> Usual = [SightingKind.Film, SightingKind.PiecesUp, SightingKind.BrineLow];

    public static void MapBoardTap(this WebApplication app)
    {
        app.MapPost(Path, AnswerAsync).Does<SayAllWell>().ExcludeFromDescription();
        // Whoever signs in after an answer that came too late is led to where it was sent.
        app.MapGet(Path, (HttpRequest request) => Results.Redirect($"~/{request.QueryString}")).ExcludeFromDescription();
    }

    private static async Task<IResult> AnswerAsync([FromForm] BoardTapForm form, HttpContext context, SayAllWell allWell, ReportSeen report, IJarBook jars,
        IHouseholdBook households, TimeProvider clock, CancellationToken cancellationToken)
    {
        ShelfInput input = form.Input ?? new ShelfInput();
        EntryMark mark = context.User.Mark(input.Id);
        HashSet<int> shown = Numbers(input.Jars), except = [.. (input.Except ?? []).Where(shown.Contains)], well = [.. shown.Except(except)];
        await allWell.DoAsync(well, input.Opened ? Numbers(input.Opening) : new HashSet<int>(), mark, cancellationToken);
        List<(int Number, SightingKind Kind)> seen = await ReportAsync(input, except, report, mark, cancellationToken);
        LocalDate date = mark.At(clock.GetUtcNow().ToInstant()).InZone((await households.ReadAsync(cancellationToken)).Zone).Date;
        ILookup<Found, int> found = InTheRecord(well, input.Id, date, await jars.KeptAsync(cancellationToken),
            (await households.ReadAsync(cancellationToken)).Zone);
        return Results.Redirect(new BoardAnswer(input.Id, [.. found[Found.Written]], [.. found[Found.AnsweredBefore]], [.. found[Found.Nothing]], seen,
            [.. except.Where(number => seen.TrueForAll(each => each.Number != number))]).Address);
    }

    /// <summary>
    /// What was ticked and said with the tick, as far as it was taken: what was refused, or sent before with something else, is asked on
    /// the page of that jar.
    /// </summary>
    private static async Task<List<(int Number, SightingKind Kind)>> ReportAsync(ShelfInput input, HashSet<int> except, ReportSeen report, EntryMark mark,
        CancellationToken cancellationToken)
    {
        var seen = new List<(int, SightingKind)>();
        foreach (int number in except)
            if (input.Seen?.GetValueOrDefault(number) is { Length: > 0 } said && Enum.TryParse(said, out SightingKind kind) && Usual.Contains(kind)
                && await report.DoAsync(number, kind, null, mark, cancellationToken) is { Refusals.Count: 0, Asked: null })
                seen.Add((number, kind));
        return seen;
    }

    /// <summary>What stands in the record of the jars of which all was well.</summary>
    private static ILookup<Found, int> InTheRecord(HashSet<int> well, Guid form, LocalDate date, IReadOnlyList<Jar> kept, DateTimeZone zone) => well.ToLookup(number =>
    {
        Jar? jar = kept.FirstOrDefault(each => each.Number == number);
        var onThatDate = jar?.Standing.Where(each => each is Look or Sighting && each.At.InZone(zone).Date == date).ToList() ?? [];
        return onThatDate.Exists(each => each.Id == AnswerId.Of(form, jar!.Id)) ? Found.Written : onThatDate.Count > 0 ? Found.AnsweredBefore : Found.Nothing;
    });

    private static HashSet<int> Numbers(string? listed) =>
        [.. (listed ?? "").Split(',').Select(number => int.TryParse(number, out int read) ? read : 0).Where(number => number > 0)];

    private enum Found
    {
        Written,
        AnsweredBefore,
        Nothing,
    }
}

/// <summary>The form of a board as the browser sends it.</summary>
public sealed class BoardTapForm
{
    public ShelfInput? Input { get; set; }
}

/// <summary>What became of the jars of a board, by number.</summary>
/// <param name="Form">The form by which it was answered.</param>
/// <param name="Well">Looked at by this answer.</param>
/// <param name="Known">Answered for by somebody before.</param>
/// <param name="Left">Not written down: no longer in the round, or the same page was sent on another day.</param>
/// <param name="Seen">What was seen at those that were ticked.</param>
/// <param name="ToSay">Ticked, and still to be said what was seen.</param>
internal sealed record BoardAnswer(Guid Form, IReadOnlyList<int> Well, IReadOnlyList<int> Known, IReadOnlyList<int> Left,
    IReadOnlyList<(int Number, SightingKind Kind)> Seen, IReadOnlyList<int> ToSay)
{
    /// <summary>The page that says so.</summary>
    public string Address
    {
        get
        {
            string left = Left.Count > 0 ? $"&left={string.Join(',', Left)}" : "";
            string done = string.Concat(Seen.Select(each => $"{each.Number}-{each.Kind},"));
            if (ToSay.Count > 0)
                return $"~/jars/{ToSay[0]}/seen?rest={string.Join(',', ToSay.Skip(1))}{(done.Length > 0 ? $"&done={done}" : "")}{left}";
            if (Seen.Count > 0)
                return $"~/?guide={Seen[^1].Kind}&jar={Seen[^1].Number}&also={string.Concat(Seen.SkipLast(1).Select(each => $"{each.Number}-{each.Kind},"))}{left}";
            return Well.Count == 0 && Known.Count > 0 ? $"~/?known={Known.Count}{left}" : $"~/?well={string.Join(',', Well)}{left}{(Well.Count > 0 ? $"&form={Form}" : "")}";
        }
    }
}
