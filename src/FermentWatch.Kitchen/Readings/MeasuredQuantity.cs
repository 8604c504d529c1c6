using FermentWatch.Kitchen.Typed;

namespace FermentWatch.Kitchen.Readings;

/// <summary>All that is known of a quantity: its names, units, limits and words. Whoever wants to know asks here.</summary>
public sealed partial class MeasuredQuantity
{
    private MeasuredQuantity()
    {
    }

    /// <summary>The number it is stored under.</summary>
    public required Quantity Key { get; init; }

    /// <summary>Its name in topics, in SenML records, in rules and in the series that others store: never given anew.</summary>
    public required string Name { get; init; }

    /// <summary>The units in which it may come in; the first is the one in which it is stored.</summary>
    public required IReadOnlyList<MeasureUnit> Units { get; init; }

    /// <summary>What it can show where vegetables ferment.</summary>
    public required PlausibleRange Range { get; init; }

    /// <summary>Values by which a part says that it has none.</summary>
    public IReadOnlyList<Sentinel> Sentinels { get; init; } = [];

    /// <summary>Whether the same value for a day and longer is nothing odd; else such a sensor is taken to hang.</summary>
    public bool MayStandStill { get; init; }

    /// <summary>Whether a pH electrode measures it, so that its calibration says what a reading is worth.</summary>
    public bool IsByElectrode { get; init; }

    /// <summary>Why its unit alone does not say in a pack what was measured, in a sentence; null where it does.</summary>
    public string? WhyItMustBeNamed { get; init; }

    /// <summary>By what a payload that nobody told us of is taken for it; null where it never is.</summary>
    public NameLikeness? LooksLike { get; init; }

    /// <summary>A stored value in words, with its unit; null for a temperature, which people see in the unit of their household.</summary>
    public Func<double, string>? Say { get; init; }

    /// <summary>Whether people see it in the unit of their household and not in the one in which it is stored.</summary>
    public bool IsInUnitOfHousehold => Say is null;

    /// <summary>How people type it.</summary>
    public Amount Typed { get; init; } = Amount.Number;

    /// <summary>The unit in which it is stored.</summary>
    public MeasureUnit StoredUnit => Units[0];

    /// <summary>The one that is meant where none is named.</summary>
    public static MeasuredQuantity Ordinary => All[0];

    /// <summary>The names, for texts that say what would be right: <c>temperature, ph, millivolts or humidity</c>.</summary>
    public static string NamesInWords => MeasureUnit.OneOf([.. All.Select(each => each.Name)]);

    /// <summary>The entry of a quantity.</summary>
    public static MeasuredQuantity Of(Quantity quantity)
    {
        foreach (MeasuredQuantity each in All)
            if (each.Key == quantity)
                return each;
        throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "Not a quantity we keep.");
    }

    /// <summary>The quantity with this name, or null.</summary>
    public static Quantity? Find(ReadOnlySpan<char> name)
    {
        foreach (MeasuredQuantity each in All)
            if (name.SequenceEqual(each.Name))
                return each.Key;
        return null;
    }

    /// <summary>
    /// Whether a value says that there is none. Such a one stays what it is, whatever offset a source has, or nothing could tell it from a
    /// reading any more.
    /// </summary>
    public bool IsSentinel(double value)
    {
        foreach (Sentinel sentinel in Sentinels)
            if (sentinel.Value == value)
                return true;
        return false;
    }
}

/// <summary>A value by which a part says that it has none.</summary>
/// <param name="Value">The value, in the unit in which its quantity is stored.</param>
public sealed record Sentinel(double Value)
{
    /// <summary>It is a real value where a reading beside it is more than this and not the same; null: it never is.</summary>
    public double? RealBesideMoreThan { get; init; }
}

/// <summary>By what a value is taken for a quantity that nobody told us of.</summary>
public sealed record NameLikeness
{
    /// <summary>Words in the name of a field or topic, lower case. Where several quantities answer, the one of fewer words is meant.</summary>
    public required IReadOnlyList<string> Words { get; init; }

    /// <summary>What a kitchen can have, in the unit in which the quantity is stored.</summary>
    public required Bounds Within { get; init; }
}

/// <summary>From and up to, both included.</summary>
public readonly record struct Bounds(double From, double UpTo)
{
    public bool Hold(double value) => value >= From && value <= UpTo;
}
