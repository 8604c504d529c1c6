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
