using System.Globalization;

namespace FermentWatch.Kitchen.Observations;

/// <summary>Somebody took something out of a jar to eat it. One of the three amounts is there; what is left is reckoned from all of them.</summary>
public sealed class PortionTaken : Observation
{
    /// <summary>Share of the full jar, above 0 up to 1; null where a volume or a weight was said.</summary>
    public double? Fraction { get; init; }

    /// <summary>As it comes to the table, litres; null where something else was said.</summary>
    public double? Litres { get; init; }

    /// <summary>As it comes to the table, kg; null where something else was said.</summary>
    public double? Kilograms { get; init; }

    /// <summary>All that it says, as one text; ids of corrections are made of it, so that it stays as it is.</summary>
    public string Content => string.Create(CultureInfo.InvariantCulture, $"{Fraction:R} {Litres:R} {Kilograms:R} {Note}");

    /// <summary>The same under another id.</summary>
    public PortionTaken Under(Guid id) => new()
    {
        Id = id, JarId = JarId, At = At, EnteredAt = EnteredAt, By = By, ById = ById, Note = Note, Fraction = Fraction, Litres = Litres,
        Kilograms = Kilograms,
    };
}

/// <summary>A jar was opened to be eaten from, and nothing was taken yet. A jar opened to look at it is a <see cref="Look"/>.</summary>
public sealed class JarOpened : Observation
{
    /// <summary>The same under another id.</summary>
    public JarOpened Under(Guid id) => new() { Id = id, JarId = JarId, At = At, EnteredAt = EnteredAt, By = By, ById = ById, Note = Note };
}
