using FermentWatch.Intake.Decoding;
using FermentWatch.Intake.Decoding.SenMl;
using FermentWatch.Intake.Topics;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Intake.Door;

/// <summary>
/// The way of every message, whichever broker it came through: decoded, its readings committed, its faults counted. When
/// <see cref="TakeAsync"/> has completed the message may be acknowledged; when it throws it must not be.
/// </summary>
public sealed class MessageDoor(IReadingIntake intake, SensorDirectory sensors)
{
    private readonly RedeliveryMemory _redeliveries = new();

    /// <summary>What came in so far.</summary>
    public IntakeCounts Counts { get; } = new();

    /// <summary>What sensors said of themselves.</summary>
    public PresenceBoard Presence { get; } = new();

    /// <summary>Takes in one message.</summary>
    /// <exception cref="IOException">The log could not be written; nothing of the message was stored.</exception>
    public async Task<DoorOutcome> TakeAsync(IncomingMessage message, CancellationToken cancellationToken)
    {
        Counts.CountMessage();
        if (_redeliveries.IsRedelivery(message))
        {
            Counts.CountRedelivery();
            return DoorOutcome.Nothing;
        }

        if (OwnTopic.Parse(message.Topic) is not { } topic)
            return await RefuseAsync(message, null, RejectReason.UnknownSensor,
                "No rule says what this topic carries.", cancellationToken);
        if (await sensors.FindAsync(topic.Slug, cancellationToken) is not { } sensor)
            return await RefuseAsync(message, null, RejectReason.UnknownSensor,
                $"No sensor in service is called '{PayloadExcerpt.Of(topic.Slug)}'.", cancellationToken);

        return topic.Kind switch
        {
            OwnTopicKind.Number => await StoreAsync(message, sensor, DecodeNumber(message, topic), cancellationToken),
            OwnTopicKind.Pack => await StoreAsync(message, sensor, SenMlDecoder.Decode(message.Payload, message.ReceivedAt), cancellationToken),
            OwnTopicKind.Status => await NoteStatusAsync(message, sensor, cancellationToken),
            _ => await RefuseAsync(message, sensor, RejectReason.UnknownQuantity,
                $"After the sensor's name belongs {QuantityNames.AllInWords}, or status.", cancellationToken),
        };
    }

    /// <summary>Counts a message that is not let in at all, and keeps it as an example.</summary>
    public async Task<DoorOutcome> RefuseAsync(
        IncomingMessage message, Sensor? sensor, RejectReason reason, string explanation, CancellationToken cancellationToken)
    {
        await RejectAsync(message, sensor, new DecodeFault(reason, PayloadExcerpt.Of(message.Payload.Span), explanation), cancellationToken);
        return new DoorOutcome(default, [reason]);
    }

    private static Decoded DecodeNumber(IncomingMessage message, OwnTopic topic) =>
        BareNumberDecoder.Decode(message.Payload.Span, MeasureUnit.StoredFor(topic.Quantity!.Value), message.ReceivedAt);

    private async Task<DoorOutcome> StoreAsync(
        IncomingMessage message, Sensor sensor, Decoded decoded, CancellationToken cancellationToken)
    {
        AppendResult appended = default;
        if (decoded.Values.Count > 0)
        {
            Reading[] readings = [.. decoded.Values.Select(value => new Reading(
                sensor.Key, value.Quantity, value.Value, value.MeasuredAt, message.ReceivedAt, value.TimeSource))];
            appended = await intake.AppendAsync(readings, cancellationToken);
            Counts.Count(appended);
            // An absolute time is its own protection against being stored twice.
            if (readings.Any(reading => reading.TimeSource != TimeSource.Payload))
                _redeliveries.Remember(message);
        }
        foreach (DecodeFault fault in decoded.Faults)
            await RejectAsync(message, sensor, fault, cancellationToken);
        return new DoorOutcome(appended, [.. decoded.Faults.Select(fault => fault.Reason)]);
    }

    private async Task<DoorOutcome> NoteStatusAsync(IncomingMessage message, Sensor sensor, CancellationToken cancellationToken)
    {
        ReadOnlySpan<byte> word = message.Payload.Span.Trim(" \t\r\n\0"u8);
        bool online = word.SequenceEqual("online"u8);
        if (!online && !word.SequenceEqual("offline"u8))
            return await RefuseAsync(message, sensor, RejectReason.NotParseable, "The word online or offline belongs here.", cancellationToken);
        Presence.Note(sensor.Key, online, message.ReceivedAt);
        return DoorOutcome.Nothing;
    }

    private Task RejectAsync(IncomingMessage message, Sensor? sensor, DecodeFault fault, CancellationToken cancellationToken)
    {
        Counts.Count(fault.Reason);
        return intake.RejectAsync(
            new Reject(PayloadExcerpt.Of(message.Topic), fault.Reason, fault.Example, message.ReceivedAt, sensor?.Key, fault.Explanation),
            cancellationToken);
    }
}
