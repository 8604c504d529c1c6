namespace FermentWatch.Acts.Households;

/// <summary>Somebody who looks in, as typed.</summary>
public sealed class GuestInput
{
    public string? Name { get; set; }

    /// <summary>For how many days the link opens the round.</summary>
    public string? Days { get; set; }

    /// <summary>The link that is withdrawn; empty for a new one.</summary>
    public string? Withdrawn { get; set; }
}
