namespace FermentWatch.Kitchen.Notices;

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
