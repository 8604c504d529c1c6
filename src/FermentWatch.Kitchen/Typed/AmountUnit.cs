namespace FermentWatch.Kitchen.Typed;

/// <summary>A unit people type, and how to turn it into ours: ours = (typed - Offset) x Factor.</summary>
internal readonly record struct AmountUnit(double Factor, double Offset = 0)
{
    public double ToOurs(double typed) => (typed - Offset) * Factor;
}
