namespace FermentWatch.Intake.Door;

/// <summary>Which door a message came through, and how.</summary>
public enum MessageOrigin
{
    /// <summary>Published to the broker in the service by a client that may.</summary>
    OurBroker = 0,

    /// <summary>Published to an outside broker while we listened, or queued there for us.</summary>
    OutsideBroker = 1,

    /// <summary>What an outside broker had retained when we subscribed: last known, time unknown.</summary>
    RetainedReplay = 2,
}
