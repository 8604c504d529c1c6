using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kitchen.Places;

/// <summary>What a household says of a place when nothing measures it.</summary>
public enum TypicalTemperature
{
    /// <summary>A refrigerator.</summary>
    ColdStore = 1,

    /// <summary>A cellar or an unheated room.</summary>
    Cellar = 2,

    /// <summary>A cool kitchen.</summary>
    Cool = 3,

    /// <summary>A kitchen as most are.</summary>
    Usual = 4,

    /// <summary>A warm kitchen.</summary>
    Warm = 5,
}

/// <summary>A temperature in words as a number with its spread. Common practice, no source: what people mean by these words.</summary>
public static class TypicalTemperatures
{
    /// <summary>The numbers behind a word.</summary>
    public static TypicalRoom Room(this TypicalTemperature word) => word switch
    {
        TypicalTemperature.ColdStore => TypicalRoom.Refrigerator,
        TypicalTemperature.Cellar => new TypicalRoom(11, 2.5),
        TypicalTemperature.Cool => new TypicalRoom(17, 2.5),
        TypicalTemperature.Usual => TypicalRoom.Usual,
        TypicalTemperature.Warm => TypicalRoom.Warm,
        _ => throw new ArgumentOutOfRangeException(nameof(word), word, "Not a temperature in words."),
    };

    /// <summary>The word as a household says it.</summary>
    public static string Words(this TypicalTemperature word) => word switch
    {
        TypicalTemperature.ColdStore => "cold store",
        TypicalTemperature.Cellar => "cellar",
        TypicalTemperature.Cool => "cool kitchen",
        TypicalTemperature.Usual => "usual kitchen",
        TypicalTemperature.Warm => "warm kitchen",
        _ => throw new ArgumentOutOfRangeException(nameof(word), word, "Not a temperature in words."),
    };
}

/// <summary>Somewhere jars stand: a shelf, a counter, a cellar, a refrigerator.</summary>
public sealed class Place
{
    public required Guid Id { get; init; }

    /// <summary>What the household calls it; unique in the household.</summary>
    public required string Name { get; set; }

    /// <summary>Order in which the round passes it, smallest first.</summary>
    public int ShelfOrder { get; set; }

    /// <summary>What the household says of its temperature; used where and when no sensor counts.</summary>
    public required TypicalTemperature Typical { get; set; }
}

/// <summary>The record of places.</summary>
public interface IPlaceBook
{
    /// <summary>All places, by shelf order.</summary>
    Task<IReadOnlyList<Place>> AllAsync(CancellationToken cancellationToken);

    Task AddAsync(Place place, CancellationToken cancellationToken);

    /// <summary>Adds places to a household that has none, in one step; where it has one, nothing is added.</summary>
    Task AddFirstAsync(IReadOnlyList<Place> first, CancellationToken cancellationToken);

    /// <summary>Writes name, order and typical temperature of a place that exists.</summary>
    Task ChangeAsync(Place place, CancellationToken cancellationToken);
}
