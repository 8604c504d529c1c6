using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Sensors;
using NodaTime;

namespace FermentWatch.Web.Api.Answers;

/// <summary>How a sensor that was not made for us is read.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Topic">Topic filter; <c>{device}</c> names the sensor.</param>
/// <param name="Sensor">The sensor it feeds; null where the topic names it.</param>
/// <param name="Payload">What the payload is.</param>
/// <param name="Quantity">What is measured; null for a SenML pack.</param>
/// <param name="ValueAt">JSON Pointer to the value.</param>
/// <param name="Unit">The unit.</param>
/// <param name="UnitAt">JSON Pointer to the unit.</param>
/// <param name="Time">How the payload says when.</param>
/// <param name="TimeAt">JSON Pointer to the time.</param>
/// <param name="Record">What names of records begin with.</param>
/// <param name="OffsetInUnitOfQuantity">Added to every value.</param>
/// <param name="LowInUnitOfQuantity">Smallest plausible value.</param>
/// <param name="HighInUnitOfQuantity">Largest plausible value.</param>
/// <param name="LongestSilence">Longest silence.</param>
public sealed record SourceRuleAnswer(
    Guid Id, string Topic, string? Sensor, SourcePayload Payload, Quantity? Quantity, string? ValueAt, string? Unit, string? UnitAt, SourceTime Time,
    string? TimeAt, string? Record, double OffsetInUnitOfQuantity, double? LowInUnitOfQuantity, double? HighInUnitOfQuantity,
        Duration? LongestSilence)
{
    public static SourceRuleAnswer Of(SourceRule rule) => new(
        rule.Id, rule.TopicFilter, rule.SensorSlug, rule.Payload, rule.Quantity, rule.ValuePointer, rule.Unit, rule.UnitPointer, rule.Time,
        rule.TimePointer, rule.RecordName, rule.Offset, rule.PlausibleLow, rule.PlausibleHigh, rule.LongestSilence);
}

/// <summary>Something unknown that looks like a sensor.</summary>
/// <param name="Topic">The topic it reports on.</param>
/// <param name="ValuePointer">JSON Pointer to the value; null for a bare number.</param>
/// <param name="Quantity">What it seems to measure.</param>
/// <param name="Unit">The unit it seems to be in.</param>
/// <param name="ValueInUnitOfQuantity">The last value, if the guess is right.</param>
/// <param name="LastSeen">When it came.</param>
/// <param name="HeardCount">How often the topic was heard.</param>
public sealed record OfferAnswer(
    string Topic, string? ValuePointer, Quantity Quantity, string Unit, double ValueInUnitOfQuantity, Instant LastSeen, long HeardCount)
{
    public static OfferAnswer Of(Offer offer) =>
        new(offer.Topic, offer.ValuePointer, offer.Quantity, offer.UnitSymbol, offer.StoredValue, offer.LastSeen, offer.Times);
}

/// <summary>Something that came in and could not be used.</summary>
/// <param name="Topic">Where it came.</param>
/// <param name="Reason">Why it could not be used.</param>
/// <param name="Count">How often.</param>
/// <param name="LastExample">What came last.</param>
/// <param name="LastReceivedAt">When.</param>
/// <param name="Explanation">What was wrong and what would be right.</param>
public sealed record RejectAnswer(string Topic, RejectReason Reason, long Count, string LastExample, Instant LastReceivedAt, string Explanation)
{
    public static RejectAnswer Of(RejectCount reject) =>
        new(reject.Last.Topic, reject.Last.Reason, reject.Count, reject.Last.Example, reject.Last.ReceivedAt, reject.Last.Explanation);
}

/// <summary>A gateway, or buttons by the jars: something that publishes under a topic filter.</summary>
/// <param name="User">Its user name at our broker.</param>
/// <param name="Filter">The topic filter under which it may publish.</param>
/// <param name="MadeBy">Who of the household made it or keeps it; null where the command line did.</param>
public sealed record GatewayAnswer(string User, string Filter, string? MadeBy)
{
    public static GatewayAnswer Of(MqttCredential credential) => new(credential.User, credential.TopicFilter, credential.MadeBy);
}

/// <summary>A gateway that was added, with the password that is said this once.</summary>
/// <param name="Host">Address of our broker.</param>
/// <param name="Port">Its port.</param>
/// <param name="Tls">Whether that port speaks TLS.</param>
/// <param name="User">Its user name.</param>
/// <param name="Password">Its password, which is not kept.</param>
/// <param name="Filter">The topic filter under which it may publish.</param>
public sealed record NewGatewayAnswer(string Host, int Port, bool Tls, string User, string Password, string Filter);
