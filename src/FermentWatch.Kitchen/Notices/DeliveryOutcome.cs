namespace FermentWatch.Kitchen.Notices;

/// <summary>How one attempt ended.</summary>
/// <param name="Result">Whether it was taken, may be tried again, or never will be.</param>
/// <param name="Trouble">What went wrong, in one line; null if it was taken.</param>
public sealed record DeliveryOutcome(DeliveryResult Result, string? Trouble)
{
    public static readonly DeliveryOutcome Delivered = new(DeliveryResult.Delivered, null);

    public static DeliveryOutcome TryAgain(string trouble) => new(DeliveryResult.TryAgain, trouble);

    public static DeliveryOutcome Refused(string trouble) => new(DeliveryResult.Refused, trouble);
}
