using NodaTime;

namespace FermentWatch.Kitchen.Notices;

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
