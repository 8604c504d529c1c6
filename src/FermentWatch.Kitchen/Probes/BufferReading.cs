namespace FermentWatch.Kitchen.Probes;

/// <summary>What a probe showed in a buffer.</summary>
/// <param name="Buffer">The buffer.</param>
/// <param name="Millivolts">What it showed, -1000 to 1000.</param>
/// <param name="Celsius">The temperature of the buffer, 0 to 50.</param>
public readonly record struct BufferReading(ReferenceBuffer Buffer, double Millivolts, double Celsius)
{
    /// <summary>The pH of the buffer at its temperature.</summary>
    public double Ph => BufferTable.PhAt(Buffer, Celsius);
}
