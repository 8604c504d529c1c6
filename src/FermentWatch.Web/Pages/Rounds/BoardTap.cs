using FermentWatch.Acts.Rounds;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Web.Accounts;
using FermentWatch.Web.Gates;
using Microsoft.AspNetCore.Mvc;

namespace FermentWatch.Web.Pages.Rounds;

/// <summary>
/// What the button of a board comes to. It has an address of its own: the board may have been looked at yesterday, on a phone, and its
/// shelf be empty by now.
/// </summary>
internal static class BoardTap
{
    /// <summary>Where the buttons of boards lead.</summary>
    public const string Path = "/round/answer";

    public static void MapBoardTap(this WebApplication app)
    {
        app.MapPost(Path, AnswerAsync).Does<AnswerBoard>().ExcludeFromDescription();
        // Whoever signs in after an answer that came too late is led to where it was sent.
        app.MapGet(Path, (HttpRequest request) => Results.Redirect($"~/{request.QueryString}")).ExcludeFromDescription();
    }

    private static async Task<IResult> AnswerAsync([FromForm] BoardTapForm form, HttpContext context, AnswerBoard act,
        CancellationToken cancellationToken)
    {
        ShelfInput input = form.Input ?? new ShelfInput();
        var request = new BoardRequest(Numbers(input.Jars), (input.Except ?? []).ToHashSet(),
            input.Opened ? Numbers(input.Opening) : new HashSet<int>(), Said(input.Seen ?? []));
        return Results.Redirect(AddressOf(input.Id, await act.DoAsync(request, context.User.Mark(input.Id), cancellationToken)));
    }

    private static Dictionary<int, SightingKind> Said(Dictionary<int, string?> seen)
    {
        var said = new Dictionary<int, SightingKind>();
        foreach ((int number, string? name) in seen)
            if (Enum.TryParse(name, out SightingKind kind))
                said.Add(number, kind);
        return said;
    }

    /// <summary>The page that says what became of it.</summary>
    private static string AddressOf(Guid form, BoardAnswered answer)
    {
        string left = answer.Left.Count > 0 ? $"&left={string.Join(',', answer.Left)}" : "";
        if (answer.ToSay.Count > 0)
            return $"~/jars/{answer.ToSay[0]}/seen?rest={string.Join(',', answer.ToSay.Skip(1))}"
                + $"{(answer.Seen.Count > 0 ? $"&done={Listed(answer.Seen)}" : "")}{left}";
        if (answer.Seen.Count > 0)
            return $"~/?guide={answer.Seen[^1].Kind}&jar={answer.Seen[^1].Number}&also={Listed(answer.Seen.SkipLast(1))}{left}";
        return answer.Well.Count == 0 && answer.Known.Count > 0 ? $"~/?known={answer.Known.Count}{left}"
            : $"~/?well={string.Join(',', answer.Well)}{left}{(answer.Well.Count > 0 ? $"&form={form}" : "")}";
    }

    private static string Listed(IEnumerable<(int Number, SightingKind Kind)> seen) =>
        string.Concat(seen.Select(each => $"{each.Number}-{each.Kind},"));

    private static HashSet<int> Numbers(string? listed) =>
        [.. (listed ?? "").Split(',').Select(number => int.TryParse(number, out int read) ? read : 0).Where(number => number > 0)];
}

/// <summary>The form of a board as the browser sends it.</summary>
public sealed class BoardTapForm
{
    public ShelfInput? Input { get; set; }
}
