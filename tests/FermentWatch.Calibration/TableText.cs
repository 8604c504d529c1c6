namespace FermentWatch.Calibration;

/// <summary>The fitted numbers as the table that stands in the docs.</summary>
internal static class TableText
{
    public static void Print(double[] at, double[] spreadLeft)
    {
        Console.WriteLine("| parameter | value | prior | prior spread | spread left by the rows | source of the prior |");
        Console.WriteLine("| --- | --- | --- | --- | --- | --- |");
        for (int i = 0; i < at.Length; i++)
        {
            FreeParameter p = FreeParameters.All[i];
            string spread = p.IsFactor ? $"x{Math.Exp(p.Spread):0.00}" : $"{p.Spread:0.###}";
            string left = spreadLeft[i] > 0.8 ? $"{spreadLeft[i]:0.00} (free)" : $"{spreadLeft[i]:0.00}";
            Console.WriteLine($"| {p.Name} | {p.ValueAt(at[i]):0.####} | {p.Prior:0.####} | {spread} | {left} | {p.PriorSource} |");
        }
    }
}
