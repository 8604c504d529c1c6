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
