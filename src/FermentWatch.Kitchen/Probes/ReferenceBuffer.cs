namespace FermentWatch.Kitchen.Probes;

/// <summary>Solutions of known pH in which a probe is checked.</summary>
public enum ReferenceBuffer
{
    /// <summary>Phthalate, pH 4.005 at 25 C.</summary>
    Phthalate4 = 1,

    /// <summary>The technical buffer of pH 7.000 at 25 C.</summary>
    Technical7 = 2,

    /// <summary>Phosphate, pH 6.865 at 25 C.</summary>
    Phosphate686 = 3,

    /// <summary>Borax, pH 9.180 at 25 C.</summary>
    Borax918 = 4,

    /// <summary>Carbonate, pH 10.012 at 25 C.</summary>
    Carbonate10 = 5,
}
