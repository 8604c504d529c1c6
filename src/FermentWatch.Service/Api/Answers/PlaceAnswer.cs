using FermentWatch.Kitchen.Places;

namespace FermentWatch.Service.Api.Answers;

/// <summary>A place.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What the household calls it.</param>
/// <param name="ShelfOrder">Order in which the round passes it.</param>
/// <param name="Typical">What the household says of its temperature.</param>
/// <param name="TypicalCelsius">The number behind it.</param>
public sealed record PlaceAnswer(Guid Id, string Name, int ShelfOrder, TypicalTemperature Typical, double TypicalCelsius)
{
    public static PlaceAnswer Of(Place place) => new(place.Id, place.Name, place.ShelfOrder, place.Typical, place.Typical.Room().MeanCelsius);
}
