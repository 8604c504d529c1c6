using System.Buffers.Text;
using System.Security.Cryptography;
using FermentWatch.Kitchen.Notices;
using Microsoft.AspNetCore.DataProtection;

namespace FermentWatch.Web.Pages.Answers;

/// <summary>
/// Links that answer a notice without signing in. Each names a notice and a shelf of it, sealed by Data Protection so that nobody can
/// make one up; person, jars, date and end are those of the notice as it was queued.
/// </summary>
public sealed class AnswerLinks(IDataProtectionProvider protection, WebOptions web) : INoticeLinks
{
    /// <summary>Where the page of a link lies, below the sub-path.</summary>
    public const string Path = "/answer";

    private const int IdBytes = 16;

    private readonly IDataProtector _seal = protection.CreateProtector("FermentWatch.AnswerLinks.v1");

    /// <inheritdoc/>
    public Uri? Root { get; } = web.PublicRoot();

    /// <inheritdoc/>
    public IReadOnlyList<AnswerLink> Of(Notice notice)
    {
        if (notice.Question is not { } question)
            return [];
        var whole = new AnswerLink(null, PathOf(new AnswerScope(notice.Id, null)));
        return question.Shelves.Count == 1
            ? [whole]
            : [whole, .. question.Shelves.Select(shelf => new AnswerLink(shelf.Place, PathOf(new AnswerScope(notice.Id, shelf.PlaceId))))];
    }

    /// <inheritdoc/>
    public AnswerScope? Open(string token)
    {
        try
        {
            byte[] ids = _seal.Unprotect(Base64Url.DecodeFromChars(token));
            if (ids.Length != 2 * IdBytes)
                return null;
            Guid place = new(ids.AsSpan(IdBytes));
            return new AnswerScope(new Guid(ids.AsSpan(0, IdBytes)), place == Guid.Empty ? null : place);
        }
        catch (Exception forged) when (forged is CryptographicException or FormatException)
        {
            return null;
        }
    }

    private string PathOf(AnswerScope scope)
    {
        byte[] ids = [.. scope.NoticeId.ToByteArray(), .. (scope.PlaceId ?? Guid.Empty).ToByteArray()];
        return $"{web.SubPath}{Path}/{Base64Url.EncodeToString(_seal.Protect(ids))}";
    }
}

/// <summary>The answer as the browser sends it.</summary>
public sealed class AnswerInput
{
    /// <summary>Sent by every browser, so that the answer is bound though no box is ticked.</summary>
    public bool Sent { get; set; }

    /// <summary>Whether it is put off instead.</summary>
    public bool Later { get; set; }

    /// <summary>Whether the jars that were to be opened were opened.</summary>
    public bool Opened { get; set; }
}
