namespace FermentWatch.Intake.Topics;

/// <summary>What belongs on a topic of our own shape.</summary>
public enum OwnTopicKind
{
    /// <summary>A bare number.</summary>
    Number = 1,

    /// <summary>A SenML pack.</summary>
    Pack = 2,

    /// <summary>The words online or offline.</summary>
    Status = 3,

    /// <summary>Nothing we know.</summary>
    Unknown = 4,
}
