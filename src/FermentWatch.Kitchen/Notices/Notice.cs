using NodaTime;

namespace FermentWatch.Kitchen.Notices;

/// <summary>One message to one person by one route, from being queued to being delivered.</summary>
public sealed class Notice
{
    public required Guid Id { get; init; }

    /// <summary>
    /// Occasion, person and route; unique, so that a notice is created once. Receivers get it to drop a repeat, some of them in a
    /// header: printable ASCII only, a name in it percent-encoded (RFC 3986).
    /// </summary>
    public required string Key { get; init; }

    public required Guid RouteId { get; init; }

    public required string Person { get; init; }

    public required string Title { get; init; }

    public required string Body { get; init; }

    /// <summary>What it asks, for channels that can carry an answer back; null where it only tells.</summary>
    public NoticeQuestion? Question { get; set; }

    /// <summary>When it should arrive.</summary>
    public required Instant DueAt { get; init; }

    /// <summary>When it has become pointless.</summary>
    public required Instant ExpiresAt { get; init; }

    public NoticeState State { get; set; } = NoticeState.Queued;

    /// <summary>How often delivery was tried.</summary>
    public int Attempts { get; set; }

    /// <summary>Not tried before; also the end of a claim, after which another may take it.</summary>
    public required Instant NextAttemptAt { get; set; }

    /// <summary>Until when whoever holds this claimed it; not kept. Null where it was not claimed, as when it is made.</summary>
    public Instant? ClaimedUntil { get; set; }

    public Instant? SettledAt { get; set; }

    /// <summary>What the last attempt said, when it failed.</summary>
    public string? LastTrouble { get; set; }
}

/// <summary>How far a notice is.</summary>
public enum NoticeState
{
    Queued = 1,

    /// <summary>The receiver has taken it.</summary>
    Delivered = 2,

    /// <summary>It became pointless before it could be delivered.</summary>
    Expired = 3,

    /// <summary>The receiver will never take it.</summary>
    Refused = 4,

    /// <summary>What it asks was answered before it was sent.</summary>
    Answered = 5,
}
