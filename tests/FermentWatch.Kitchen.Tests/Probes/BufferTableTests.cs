using System.Globalization;
using FermentWatch.Kitchen.Probes;

namespace FermentWatch.Kitchen.Tests.Probes;

public sealed class BufferTableTests
{
    // IUPAC/NIST reference buffers, three decimals, as reprinted by makers of buffers; the table of JIS Z 8802 (two decimals)
    // agrees within 0.01. Columns: temperature in C, phthalate 4, technical 7, phosphate 6.86, borax 9.18, carbonate 10.
    private const string Published = """
        0,4.000,7.118,6.984,9.464,10.317
        5,3.998,7.087,6.951,9.395,10.245
        10,3.997,7.059,6.923,9.332,10.179
        15,3.998,7.036,6.900,9.276,10.118
        20,4.001,7.016,6.881,9.225,10.062
        25,4.005,7.000,6.865,9.180,10.012
        30,4.011,6.987,6.853,9.139,9.966
        35,4.018,6.977,6.844,9.102,9.925
        40,4.027,6.970,6.838,9.068,9.889
        45,4.038,6.965,6.834,9.038,9.857
        50,4.050,6.964,6.833,9.010,9.828
        """;

    private static readonly ReferenceBuffer[] _columns =
        [ReferenceBuffer.Phthalate4, ReferenceBuffer.Technical7, ReferenceBuffer.Phosphate686, ReferenceBuffer.Borax918, ReferenceBuffer.Carbonate10];

    [Fact]
    public void PhAt_EveryPublishedRow_AgreesWithinAHundredth()
    {
        int compared = 0;
        foreach (string row in Published.Split('\n'))
        {
            double[] numbers = [.. row.Split(',').Select(text => double.Parse(text, CultureInfo.InvariantCulture))];
            for (int column = 0; column < _columns.Length; column++, compared++)
                Assert.Equal(numbers[column + 1], BufferTable.PhAt(_columns[column], numbers[0]), 0.01);
        }
        Assert.Equal(55, compared);
    }

    [Fact]
    public void PhAt_BetweenRows_LiesBetweenThem()
    {
        Assert.Equal(7.008, BufferTable.PhAt(ReferenceBuffer.Technical7, 22.5), 1e-9);
        Assert.Equal(9.0408, BufferTable.PhAt(ReferenceBuffer.Borax918, 44.536), 5e-4);
    }

    [Theory]
    [InlineData(-0.1)]
    [InlineData(50.1)]
    [InlineData(double.NaN)]
    public void PhAt_OutsideTheTable_Throws(double celsius) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => BufferTable.PhAt(ReferenceBuffer.Phthalate4, celsius));
}
