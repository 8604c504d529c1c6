namespace FermentWatch.Intake.Embedded;

/// <summary>Why the broker let a client or something it wanted not pass.</summary>
public enum RefusalReason
{
    /// <summary>No such user, or not its password.</summary>
    BadCredentials = 1,

    /// <summary>An MQTT 3.1.1 client gave no client id.</summary>
    NoClientId = 2,

    /// <summary>As many clients are connected as may be.</summary>
    TooManyConnections = 4,

    /// <summary>Too many wrong passwords from there a short while ago.</summary>
    TooManyGuesses = 5,

    /// <summary>It may not publish on the topic.</summary>
    PublishNotAllowed = 6,

    /// <summary>It may not listen to the topic.</summary>
    SubscribeNotAllowed = 7,

    /// <summary>Its credential was withdrawn while it was connected.</summary>
    CredentialWithdrawn = 8,

    /// <summary>The records could not be asked whether it may come in.</summary>
    RecordsUnavailable = 9,

    /// <summary>It announced a packet longer than is read at all; its connection was cut.</summary>
    PacketTooLong = 10,

    /// <summary>It did not say who it is, and its place was needed for another.</summary>
    TooManyWaiting = 11,

    /// <summary>Its user sends more messages a second than it may; it is slowed down, and nothing is lost.</summary>
    TooFast = 12,

    /// <summary>As many clients of its user are connected as may be.</summary>
    TooManyOfOneUser = 13,
}
