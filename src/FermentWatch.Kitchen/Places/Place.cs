namespace FermentWatch.Kitchen.Places;

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
