namespace FermentWatch.Kinetics.Salt;

/// <summary>Kinds of salt whose spoonfuls differ in weight.</summary>
public enum SaltKind
{
    /// <summary>Fine table salt.</summary>
    Table,

    /// <summary>Canning or pickling salt.</summary>
    CanningOrPickling,

    /// <summary>Coarse flakes: never to be measured by volume.</summary>
    CoarseFlake,
}

/// <summary>Grams in a tablespoon of a kind of salt: the range of published and weighed figures, and one to reckon with.</summary>
/// <param name="LowGrams">Least figure found.</param>
/// <param name="TypicalGrams">The figure to reckon with.</param>
/// <param name="HighGrams">Largest figure found.</param>
public sealed record SpoonMeasure(double LowGrams, double TypicalGrams, double HighGrams)
{
    /// <summary>Teaspoons in a tablespoon.</summary>
    public const double TeaspoonsPerTablespoon = 3;

    /// <summary>The measure of a kind.</summary>
    /// <remarks>
    /// Table: USDA SR 02047, 6.0 g a teaspoon, so 18.0 g a tablespoon. Canning: University of Wisconsin Extension
    /// equivalence (13.75 g) up to a kitchen weighing (21.3 g), typical 18.0 between the University of Minnesota's 17.0 and 18.9.
    /// Coarse flake: kitchen weighings, 9 to 17.7 g; typical is their middle.
    /// </remarks>
    public static SpoonMeasure Of(SaltKind kind) => kind switch
    {
        SaltKind.Table => new(17.0, 18.0, 19.0),
        SaltKind.CanningOrPickling => new(13.75, 18.0, 21.3),
        SaltKind.CoarseFlake => new(9.0, 13.4, 17.7),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "table, canning or pickling, or coarse flake is taken"),
    };

    /// <summary>Tablespoons that hold this much salt: fewest (heavy spoonfuls), typical, most (light ones).</summary>
    public (double Fewest, double Typical, double Most) TablespoonsFor(double grams) =>
        (grams / HighGrams, grams / TypicalGrams, grams / LowGrams);
}
