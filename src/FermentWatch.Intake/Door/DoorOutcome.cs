using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Intake.Door;

/// <summary>What became of a message. Whatever it is, the message is done with and may be acknowledged.</summary>
/// <param name="Appended">What the log did with its readings.</param>
/// <param name="Rejected">Reasons for which it or parts of it were not stored, none if all was.</param>
public sealed record DoorOutcome(AppendResult Appended, IReadOnlyList<RejectReason> Rejected)
{
    /// <summary>Nothing to store and nothing wrong.</summary>
    public static DoorOutcome Nothing { get; } = new(default, []);

    /// <summary>The first reason, if nothing of the message was of use.</summary>
    public RejectReason? RefusedFor =>
        Rejected.Count > 0 && Appended.Stored + Appended.Duplicates + Appended.Conflicts == 0 ? Rejected[0] : null;
}
