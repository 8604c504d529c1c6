namespace FermentWatch.Kitchen.Notices;

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
