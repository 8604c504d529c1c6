namespace FermentWatch.Kitchen.Forwarding;

/// <summary>Why a point was left out.</summary>
public enum NotForwardedReason
{
    /// <summary>The receiver took others, but never this one.</summary>
    Refused = 1,

    /// <summary>The sensor or jar it belongs to is not in the records.</summary>
    UnknownOwner = 2,
}
