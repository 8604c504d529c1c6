namespace FermentWatch.Kitchen.Households;

/// <summary>The unit in which this household weighs.</summary>
public enum MassUnit
{
    Kilogram = 1,
    Pound = 2,
}
