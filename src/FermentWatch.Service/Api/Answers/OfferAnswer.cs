using FermentWatch.Intake.Offers;
using FermentWatch.Kitchen.Readings;
using NodaTime;

namespace FermentWatch.Service.Api.Answers;

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
