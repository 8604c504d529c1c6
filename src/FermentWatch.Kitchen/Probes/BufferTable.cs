namespace FermentWatch.Kitchen.Probes;

/// <summary>
/// The pH of reference buffers from 0 to 50 C: the IUPAC and NIST reference buffers to three decimals as makers print them on the
/// bottle; the table of JIS Z 8802 (two decimals) agrees within 0.01. Between the rows, 5 C apart, straight lines.
/// </summary>
public static class BufferTable
{
    /// <summary>The lowest temperature of the table.</summary>
    public const double LowestCelsius = 0;

    /// <summary>The highest temperature of the table.</summary>
    public const double HighestCelsius = 50;

    private const double StepCelsius = 5;

    private static readonly double[] _phthalate4 = [4.000, 3.998, 3.997, 3.998, 4.001, 4.005, 4.011, 4.018, 4.027, 4.038, 4.050];
    private static readonly double[] _technical7 = [7.118, 7.087, 7.059, 7.036, 7.016, 7.000, 6.987, 6.977, 6.970, 6.965, 6.964];
    private static readonly double[] _phosphate686 = [6.984, 6.951, 6.923, 6.900, 6.881, 6.865, 6.853, 6.844, 6.838, 6.834, 6.833];
    private static readonly double[] _borax918 = [9.464, 9.395, 9.332, 9.276, 9.225, 9.180, 9.139, 9.102, 9.068, 9.038, 9.010];
    private static readonly double[] _carbonate10 = [10.317, 10.245, 10.179, 10.118, 10.062, 10.012, 9.966, 9.925, 9.889, 9.857, 9.828];

    /// <summary>The pH of a buffer at its own temperature.</summary>
    /// <param name="buffer">The buffer.</param>
    /// <param name="celsius">Its temperature, 0 to 50 C.</param>
    public static double PhAt(ReferenceBuffer buffer, double celsius)
    {
        if (!(celsius is >= LowestCelsius and <= HighestCelsius))
            throw new ArgumentOutOfRangeException(nameof(celsius), celsius, "The pH of buffers is known from 0 to 50 C.");
        double[] rows = Rows(buffer);
        int below = Math.Min((int)(celsius / StepCelsius), rows.Length - 2);
        double share = (celsius / StepCelsius) - below;
        return rows[below] + (share * (rows[below + 1] - rows[below]));
    }

    private static double[] Rows(ReferenceBuffer buffer) => buffer switch
    {
        ReferenceBuffer.Phthalate4 => _phthalate4,
        ReferenceBuffer.Technical7 => _technical7,
        ReferenceBuffer.Phosphate686 => _phosphate686,
        ReferenceBuffer.Borax918 => _borax918,
        ReferenceBuffer.Carbonate10 => _carbonate10,
        _ => throw new ArgumentOutOfRangeException(nameof(buffer), buffer, "Not a buffer we know."),
    };
}

/// <summary>What a probe showed in a buffer.</summary>
/// <param name="Buffer">The buffer.</param>
/// <param name="Millivolts">What it showed, -1000 to 1000.</param>
/// <param name="Celsius">The temperature of the buffer, 0 to 50.</param>
public readonly record struct BufferReading(ReferenceBuffer Buffer, double Millivolts, double Celsius)
{
    internal const double NeutralPh = 7;

    /// <summary>The pH of the buffer at its temperature.</summary>
    public double Ph => BufferTable.PhAt(Buffer, Celsius);

    /// <summary>
    /// What a probe showed that tells pH and not a potential: the potential by which an ideal electrode would have told it at the
    /// temperature of the buffer, so that its offset and slope are judged by the same rules.
    /// </summary>
    /// <param name="buffer">The buffer.</param>
    /// <param name="shownPh">The pH it showed.</param>
    /// <param name="celsius">The temperature of the buffer, 0 to 50.</param>
    public static BufferReading OfShownPh(ReferenceBuffer buffer, double shownPh, double celsius) =>
        new(buffer, -Nernst.MillivoltsPerPh(celsius) * (shownPh - NeutralPh), celsius);
}

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
