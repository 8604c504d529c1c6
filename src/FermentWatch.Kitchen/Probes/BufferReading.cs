namespace FermentWatch.Kitchen.Probes;

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
