namespace FermentWatch.Kitchen.Notices;

/// <summary>How one person is reached.</summary>
public sealed class NoticeRoute
{
    public required Guid Id { get; init; }

    /// <summary>The person, by the name the household uses; one person may have several routes.</summary>
    public required string Person { get; init; }

    public required Channel Channel { get; init; }

    /// <summary>
    /// Web address for <see cref="Channel.Webhook"/>; topic for <see cref="Channel.Mqtt"/>; mail address for <see cref="Channel.Email"/>;
    /// for <see cref="Channel.WebPush"/> the endpoint a browser gave, which is shown to nobody: it names one browser.
    /// </summary>
    public required string Address { get; init; }

    /// <summary>Key by which a webhook's body is signed; the keys of the browser for web push, as JSON; null for the others.</summary>
    public string? Secret { get; init; }

    /// <summary>Who of the household added it, or keeps it; null where that is from before it was noted.</summary>
    public string? MadeBy { get; init; }

    /// <summary>The account of that person; null where it was not noted.</summary>
    public Guid? MadeById { get; init; }
}

/// <summary>A way to reach somebody.</summary>
public enum Channel
{
    /// <summary>Signed JSON posted to an address.</summary>
    Webhook = 1,

    /// <summary>A message on our own broker or the outside one.</summary>
    Mqtt = 2,

    /// <summary>A letter by SMTP.</summary>
    Email = 3,

    /// <summary>A notification on a phone or a computer, by way of the push service of its browser (RFC 8030).</summary>
    WebPush = 4,
}
