namespace FermentWatch.Acts.Notices;

/// <summary>How somebody is to be reached, as typed.</summary>
public sealed class NoticeRouteInput
{
    /// <summary>The name the household uses.</summary>
    public string? Person { get; set; }

    /// <summary><c>Email</c>, <c>Webhook</c> or <c>Mqtt</c>.</summary>
    public string? Channel { get; set; }

    /// <summary>Mail address, web address or topic.</summary>
    public string? Address { get; set; }

    /// <summary>Key by which a webhook's body is signed.</summary>
    public string? Secret { get; set; }
}
