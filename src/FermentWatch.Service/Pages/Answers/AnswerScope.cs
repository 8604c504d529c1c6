namespace FermentWatch.Service.Pages.Answers;

/// <summary>What a link answers.</summary>
/// <param name="NoticeId">The notice it came with.</param>
/// <param name="PlaceId">The shelf; null for the whole round.</param>
public sealed record AnswerScope(Guid NoticeId, Guid? PlaceId);
