namespace FermentWatch.Acts.Households;

/// <summary>A place, as typed.</summary>
public sealed class PlaceInput
{
    /// <summary>The place that is changed; empty for a new one.</summary>
    public string? Id { get; set; }

    public string? Name { get; set; }

    /// <summary>Name of a <see cref="Kitchen.Places.TypicalTemperature"/>.</summary>
    public string? Typical { get; set; }

    /// <summary>Order in which the round passes it; empty puts it last.</summary>
    public string? ShelfOrder { get; set; }
}
