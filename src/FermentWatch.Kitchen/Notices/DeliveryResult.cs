namespace FermentWatch.Kitchen.Notices;

/// <summary>What an attempt came to.</summary>
public enum DeliveryResult
{
    Delivered = 1,
    TryAgain = 2,
    Refused = 3,
}
