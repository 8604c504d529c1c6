using FermentWatch.Kitchen.Notices;

namespace FermentWatch.Notices.Tests.Doubles;

/// <summary>Links that say what they answer.</summary>
internal sealed class FixedLinks(string? root = null) : INoticeLinks
{
    public Uri? Root { get; } = root is null ? null : new Uri(root);

    public IReadOnlyList<AnswerLink> Of(Notice notice) => notice.Question is not { } question ? []
        : [new(null, "/answer/whole"), .. question.Shelves.Select(shelf => new AnswerLink(shelf.Place, $"/answer/{shelf.PlaceId:N}"))];

    public AnswerScope? Open(string token) => null;
}
