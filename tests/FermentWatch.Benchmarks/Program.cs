using System.Globalization;
using FermentWatch.Benchmarks;

// Performance as ratios measured in one run, with the exactness beside them.
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
switch (args)
{
    case ["forecast"]:
        ForecastBenchmark.Run();
        return 0;
    default:
        Console.Error.WriteLine("benchmarks: 'forecast' would be right");
        return 2;
}
