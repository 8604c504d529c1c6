using FermentWatch.Kitchen.Notices;
using NodaTime;

namespace FermentWatch.Service.Api.Answers;

/// <summary>What became of one notice.</summary>
/// <param name="Key">Person, occasion and route.</param>
/// <param name="Person">Whom it is for.</param>
/// <param name="Title">Its heading.</param>
/// <param name="State">How far it is.</param>
/// <param name="DueAt">When it should arrive.</param>
/// <param name="Attempts">How often delivery was tried.</param>
/// <param name="SettledAt">When it was delivered or given up.</param>
/// <param name="LastTrouble">What the last attempt said, when it failed.</param>
public sealed record NoticeAnswer(
    string Key, string Person, string Title, NoticeState State, Instant DueAt, int Attempts, Instant? SettledAt, string? LastTrouble)
{
    public static NoticeAnswer Of(Notice notice) => new(
        notice.Key, notice.Person, notice.Title, notice.State, notice.DueAt, notice.Attempts, notice.SettledAt, notice.LastTrouble);
}
