using NodaTime;

namespace FermentWatch.Kitchen.Notices;

/// <summary>A door to people.</summary>
public interface INoticeChannel
{
    Channel Channel { get; }

    /// <summary>What is missing in the settings before it can send, with what would mend it; null where nothing is.</summary>
    string? Missing => null;

    /// <summary>What would be right in place of an address that is none for this channel; null where it is one.</summary>
    string? WouldBeRight(string? address);

    /// <summary>Tries once. Trouble of the receiver is an outcome, never an exception.</summary>
    /// <param name="notice">What to say; its <see cref="Notice.Key"/> goes along.</param>
    /// <param name="route">Whom to tell.</param>
    /// <param name="late">How late it is, for the message to say so; null when it is in time.</param>
    Task<DeliveryOutcome> SendAsync(Notice notice, NoticeRoute route, string? late, CancellationToken cancellationToken);
}

/// <summary>How one attempt ended.</summary>
/// <param name="Result">Whether it was taken, may be tried again, or never will be.</param>
/// <param name="Trouble">What went wrong, in one line; null if it was taken.</param>
/// <param name="Wait">How long the receiver asks to be left alone, zero to a day; null where it did not say.</param>
public sealed record DeliveryOutcome(DeliveryResult Result, string? Trouble, Duration? Wait = null)
{
    public static readonly DeliveryOutcome Delivered = new(DeliveryResult.Delivered, null);

    public static DeliveryOutcome TryAgain(string trouble, Duration? wait = null) => new(DeliveryResult.TryAgain, trouble, wait);

    public static DeliveryOutcome Refused(string trouble) => new(DeliveryResult.Refused, trouble);
}

/// <summary>What an attempt came to.</summary>
public enum DeliveryResult
{
    Delivered = 1,
    TryAgain = 2,
    Refused = 3,
}
