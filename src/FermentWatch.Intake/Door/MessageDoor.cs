using FermentWatch.Intake.Decoding;
using FermentWatch.Intake.Decoding.SenMl;
using FermentWatch.Intake.Offers;
using FermentWatch.Intake.Sources;
using FermentWatch.Intake.Topics;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Intake.Door;

/// <summary>
/// The way of every message, whichever broker it came through: decoded, its readings committed, its faults counted. When
/// <see cref="TakeAsync"/> has completed the message may be acknowledged; when it throws it must not be.
/// </summary>
/// <param name="intake">Where readings are written down.</param>
/// <param name="sensors">Who reports to us.</param>
/// <param name="sources">How to read sensors that were not made for us; null if there are none.</param>
/// <param name="buttons">What becomes of presses on buttons by the jars; null if nothing does.</param>
/// <param name="rows">The log's last rows, against which redeliveries after a restart are told; null stores them again.</param>
/// <param name="options">Which times are believed; null takes the defaults.</param>
/// <param name="offers">Where unknown topics are noted; null for a board of its own.</param>
public sealed class MessageDoor(
    IReadingIntake intake,
    SensorDirectory sensors,
    SourceRuleSet? sources = null,
    IJarButtons? buttons = null,
    RowsBeforeStart? rows = null,
    DoorOptions? options = null,
    OfferBoard? offers = null)
{
    private readonly DoorOptions _options = options ?? new DoorOptions();
    private readonly RedeliveryMemory _redeliveries = new();

    /// <summary>What came in so far.</summary>
    public IntakeCounts Counts { get; } = new();

    /// <summary>What sensors said of themselves.</summary>
    public PresenceBoard Presence { get; } = new();

    /// <summary>What looks like a sensor and is none yet.</summary>
    public OfferBoard Offers { get; } = offers ?? new OfferBoard();

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
        if (OwnTopic.Parse(message.Topic) is { } topic)
            return await TakeOwnAsync(message, topic, cancellationToken);
        if (OwnTopic.JarOfButton(message.Topic) is { } jar)
            return await TakePressAsync(message, jar, cancellationToken);
        if (OwnTopic.IsOut(message.Topic))
        {
            Counts.CountIgnored();
            return DoorOutcome.Nothing;
        }
        return await TakeBySourcesAsync(message, cancellationToken);
    }

    /// <summary>Counts a message that is not let in at all, and keeps it as an example.</summary>
    public async Task<DoorOutcome> RefuseAsync(
        IncomingMessage message, Sensor? sensor, RejectReason reason, string explanation, CancellationToken cancellationToken)
    {
        await RejectAsync(message, sensor, new DecodeFault(reason, PayloadExcerpt.Of(message.Payload.Span), explanation), cancellationToken);
        return new DoorOutcome(default, [reason]);
    }

    /// <summary>Whether a topic is the status of a sensor that is in service.</summary>
    public async Task<bool> IsStatusOfASensorAsync(string topic, CancellationToken cancellationToken) =>
        OwnTopic.Parse(topic) is { Kind: OwnTopicKind.Status } status && await sensors.FindAsync(status.Slug, cancellationToken) is not null;

    private async Task<DoorOutcome> TakeOwnAsync(IncomingMessage message, OwnTopic topic, CancellationToken cancellationToken)
    {
        if (await sensors.FindAsync(topic.Slug, cancellationToken) is not { } sensor)
            return await RefuseAsync(message, null, RejectReason.UnknownSensor,
                $"No sensor in service is called '{PayloadExcerpt.Of(topic.Slug)}'.", cancellationToken);
        switch (topic.Kind)
        {
            case OwnTopicKind.Status:
                return await NoteStatusAsync(message, sensor, cancellationToken);
            case OwnTopicKind.Unknown:
                return await RefuseAsync(message, sensor, RejectReason.UnknownQuantity,
                    $"After the sensor's name belongs {MeasuredQuantity.NamesInWords}, or status.", cancellationToken);
        }
        if (message.Origin == MessageOrigin.RetainedReplay)
            return await RefuseReplayAsync(message, sensor, cancellationToken);
        Decoded decoded = topic.Kind == OwnTopicKind.Pack
            ? SenMlDecoder.Decode(message.Payload, message.ReceivedAt)
            : BareNumberDecoder.Decode(message.Payload.Span, MeasuredQuantity.Of(topic.Quantity!.Value).StoredUnit, message.ReceivedAt);
        return await StoreAsync(message, [(sensor, decoded)], cancellationToken);
    }

    private async Task<DoorOutcome> TakePressAsync(IncomingMessage message, string jar, CancellationToken cancellationToken)
    {
        // A press that a broker had retained may be from any day.
        if (message.Origin == MessageOrigin.RetainedReplay)
            return await RefuseAsync(message, null, RejectReason.RetainedReplay,
                "The outside broker had kept this press of a button; when it was is not known.", cancellationToken);
        if (buttons is null || !await buttons.PressedAsync(jar, message.ReceivedAt, cancellationToken))
            return await RefuseAsync(message, null, RejectReason.UnknownSensor,
                $"There is no jar '{PayloadExcerpt.Of(jar)}' to look at.", cancellationToken);
        _redeliveries.Remember(message);
        return DoorOutcome.Nothing;
    }

    private async Task<DoorOutcome> TakeBySourcesAsync(IncomingMessage message, CancellationToken cancellationToken)
    {
        IReadOnlyList<SourceReader> readers = sources is null ? [] : await sources.ForAsync(message.Topic, cancellationToken);
        var decoded = new List<(Sensor, Decoded)>();
        string? unknownDevice = null;
        var likely = new List<Likeness>();
        foreach (SourceReader reader in readers)
        {
            string? slug = reader.Rule.SensorSlug ?? reader.Filter.DeviceSlug(message.Topic);
            if (slug is null || await sensors.FindAsync(slug, cancellationToken) is not { } sensor)
            {
                unknownDevice = slug ?? "";
                likely.AddRange(LikenessFinder.ByRule(reader, SourceDecoder.Decode(reader, message.Payload, message.ReceivedAt)));
            }
            else if (message.Origin == MessageOrigin.RetainedReplay)
                return await RefuseReplayAsync(message, sensor, cancellationToken);
            else
            {
                await sources!.NoteFeedAsync(reader.Rule, sensor, cancellationToken);
                decoded.Add((sensor, SourceDecoder.Decode(reader, message.Payload, message.ReceivedAt)));
            }
        }
        return decoded.Count > 0
            ? await StoreAsync(message, decoded, cancellationToken)
            : await OfferAsync(message, unknownDevice, likely, cancellationToken);
    }

    private async Task<DoorOutcome> OfferAsync(
        IncomingMessage message, string? unknownDevice, List<Likeness> byRule, CancellationToken cancellationToken)
    {
        // What a rule reads needs no guess; without one the names of fields must do.
        IReadOnlyList<Likeness> likely = byRule.Count > 0 ? byRule : LikenessFinder.Find(message.Topic, message.Payload);
        if (Offers.Note(message.Topic, likely, message.ReceivedAt, string.IsNullOrEmpty(unknownDevice) ? null : unknownDevice, byRule.Count > 0))
            return DoorOutcome.Nothing;
        // An outside broker carries the talk of a whole house; what no rule asks for is not worth a word.
        if (message.Origin != MessageOrigin.OurBroker && unknownDevice is null)
        {
            Counts.CountIgnored();
            return DoorOutcome.Nothing;
        }
        return await RefuseAsync(message, null, RejectReason.UnknownSensor,
            unknownDevice is null ? "No rule says what this topic carries." : $"No sensor in service is called '{unknownDevice}'.",
            cancellationToken);
    }

    private Task<DoorOutcome> RefuseReplayAsync(IncomingMessage message, Sensor sensor, CancellationToken cancellationToken) =>
        RefuseAsync(message, sensor, RejectReason.RetainedReplay,
            "The outside broker had kept this; when it was measured is not known, so it is no new reading.", cancellationToken);

    private async Task<DoorOutcome> StoreAsync(
        IncomingMessage message, List<(Sensor Sensor, Decoded Decoded)> read, CancellationToken cancellationToken)
    {
        List<(Sensor Sensor, Decoded Decoded)> decoded = read.ConvertAll(part => (part.Sensor, Believed(message, part.Decoded)));
        Reading[] readings =
        [
            .. decoded.SelectMany(part => part.Decoded.Values.Select(value => new Reading(
                part.Sensor.Key, value.Quantity, value.Value, value.MeasuredAt, message.ReceivedAt, value.TimeSource))),
        ];
        AppendResult appended = default;
        if (await WasStoredBeforeStartAsync(message, readings, cancellationToken))
            Counts.CountRedelivery();
        else if (readings.Length > 0)
        {
            appended = await intake.AppendAsync(readings, cancellationToken);
            Counts.Count(appended);
            // An absolute time is its own protection against being stored twice.
            if (readings.Any(reading => reading.TimeSource != TimeSource.Payload))
                _redeliveries.Remember(message);
        }
        var rejected = new List<RejectReason>();
        foreach ((Sensor sensor, Decoded part) in decoded)
            foreach (DecodeFault fault in part.Faults)
            {
                rejected.Add(fault.Reason);
                await RejectAsync(message, sensor, fault, cancellationToken);
            }
        return new DoorOutcome(appended, rejected);
    }

    /// <summary>Takes out what bears a time that cannot be that of a measurement; each such time is a fault of its own.</summary>
    private Decoded Believed(IncomingMessage message, Decoded decoded)
    {
        var believed = new List<DecodedValue>(decoded.Values.Count);
        var faults = new List<DecodeFault>(decoded.Faults);
        foreach (DecodedValue value in decoded.Values)
        {
            if (_options.Disbelief(value.MeasuredAt, message.ReceivedAt) is { } disbelief)
                faults.Add(new DecodeFault(RejectReason.TimeNotBelieved, PayloadExcerpt.Of(message.Payload.Span), disbelief));
            else
                believed.Add(value);
        }
        return new Decoded(believed, faults);
    }

    private async Task<bool> WasStoredBeforeStartAsync(IncomingMessage message, Reading[] readings, CancellationToken cancellationToken) =>
        rows is not null
        && message.Delivery is { IsDuplicate: true }
        && readings is [{ TimeSource: TimeSource.Arrival } only]
        && await rows.HoldAsync(only, cancellationToken);

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
