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
}
