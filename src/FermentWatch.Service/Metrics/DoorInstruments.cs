using System.Diagnostics.Metrics;
using FermentWatch.Intake.Door;
using FermentWatch.Intake.Embedded;
using FermentWatch.Intake.Outside;
using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Service.Metrics;

/// <summary>What comes in, and by which broker.</summary>
internal static class DoorInstruments
{
    public static void AddDoor(this Meter meter, IntakeCounts counts)
    {
        meter.Count("fermentwatch.intake.messages", "Messages that reached the door.", () => counts.Messages);
        meter.Count("fermentwatch.intake.readings", "Readings that were new, and stored.", () => counts.Stored);
        meter.Count("fermentwatch.intake.duplicates", "Readings that were there already with the same value.", () => counts.Duplicates);
        meter.Count("fermentwatch.intake.conflicts", "Readings whose place was taken by another value.", () => counts.Conflicts);
        meter.Count("fermentwatch.intake.redeliveries", "Messages that had come before.", () => counts.Redeliveries);
        meter.Count("fermentwatch.intake.ignored", "Messages of an outside broker that are none of ours.", () => counts.Ignored);
        meter.Count<RejectReason>("fermentwatch.intake.refused", "Payloads and fields that were not stored.", "reason", counts.Rejected);
    }

    public static void AddBroker(this Meter meter, Broker broker)
    {
        meter.Gauge("fermentwatch.broker.clients", null, "Clients that are connected.", () => broker.ConnectedClients);
        meter.Count<RefusalReason>("fermentwatch.broker.refused", "Clients and wishes of clients that were refused.", "reason",
            broker.Counts.Refused);
        meter.Count("fermentwatch.broker.dropped", "Messages for listeners too slow to take them.", () => broker.Counts.DroppedForSlowSubscribers);
    }

    public static void AddLink(this Meter meter, OutsideLink link)
    {
        meter.Gauge("fermentwatch.link.connected", null, "1 while the outside broker is connected, else 0.", () => link.IsConnected ? 1 : 0);
        meter.Count("fermentwatch.link.attempts", "Tries to connect to the outside broker.", () => link.Counts.Attempts);
        meter.Count("fermentwatch.link.connects", "Tries that led to a connection.", () => link.Counts.Connects);
        meter.Count("fermentwatch.link.acknowledged", "Messages acknowledged after they were stored.", () => link.Counts.Acknowledged);
        meter.Count("fermentwatch.link.not_stored", "Messages left to the outside broker to send again.", () => link.Counts.NotStored);
    }
}
