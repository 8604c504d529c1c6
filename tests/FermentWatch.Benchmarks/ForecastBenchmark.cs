using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Simulation;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Reference.Tests.Published;
using Trace = FermentWatch.Kinetics.Simulation.Trace;

namespace FermentWatch.Benchmarks;

/// <summary>256 members over 60 days, one thread, against CVODE solving the same members at 1e-6.</summary>
internal static class ForecastBenchmark
{
    private const int Members = 256;
    private const int Days = 60;
    private const int Repeats = 15;
    private const int ExactMembers = 8;

    public static void Run()
    {
        Compare("smooth temperature (daily cycle)", 0);
        Compare("lagged noisy record", 0.5);
        Costs();
    }

    /// <summary>What a forecast costs by its parts, through the public door.</summary>
    private static void Costs()
    {
        ForecastRequest ahead = new() { Recipe = JarRecipe.Of(Vegetable.Of("cabbage"), Cut.Shredded, 2.25), Temperatures = Course(0.5), Days = Days };
        ForecastRequest week = ahead with { Days = 7 };
        ForecastRequest month = ahead with { Days = 30 };
        ForecastRequest read = ahead with { Readings = [new PhReading(3, 4.5, PhMethod.Meter)] };
        double whole = Fastest(Repeats, () => Forecaster.Run(ahead));
        double shorter = Fastest(Repeats, () => Forecaster.Run(week));
        double longer = Fastest(Repeats, () => Forecaster.Run(month));
        double observed = Fastest(5, () => Forecaster.Run(read));
        Console.WriteLine("costs, 256 members, one thread, processor time");
        Console.WriteLine($"  new temperature: {(longer - shorter) / 23:0.00} ms a day of it after the first week, {shorter:0.0} ms for a whole "
            + "replay of 7 days");
        Console.WriteLine($"  projection: {whole:0.0} ms from packing to day {Days}");
        Console.WriteLine($"  an observation (meter, day 3): {observed - whole:0.0} ms");
        double forty = Fastest(3, () =>
            Parallel.For(0, 40, new ParallelOptions { MaxDegreeOfParallelism = 2 }, jar => Forecaster.Run(ahead with { Seed = (ulong)jar })));
        Console.WriteLine($"  forty jars of {Days} days replayed whole: {forty:0} ms of processor time, {forty / 2:0} ms on two cores of their own");
    }

    private static void Compare(string name, double noise)
    {
        JarMembers jar = new(JarRecipe.Of(Vegetable.Of("cabbage"), Cut.Shredded, 2.25) with { VesselLitres = 1 }, Course(noise), Days,
            ModelParameters.Current, new PriorSpread());
        double[] deviates = MemberPrior.Standard.Draw(1, Members);
        double[] days = [.. Enumerable.Range(0, Days + 1).Select(day => (double)day)];
        var table = new LaneTable(Members);
        var trace = new Trace(Members, days, [new Passage(Watched.BrinePh, 4.6, Members), new Passage(Watched.CentrePh, 4.6, Members)]);
        double ours = Fastest(Repeats, () => jar.Run(deviates, table, trace));
        long before = GC.GetAllocatedBytesForCurrentThread();
        jar.Run(deviates, table, trace);
        long allocated = GC.GetAllocatedBytesForCurrentThread() - before;
        Console.WriteLine($"{name}: {Members} members, {Days} days, one thread");
        Console.WriteLine($"  ours {ours:0.0} ms, {allocated} bytes allocated");
        Reference(jar, deviates, trace, ours, Members, 1e-6, adams: false);
        Reference(jar, deviates, trace, ours, Members, 1e-6, adams: true);
        Reference(jar, deviates, trace, ours, ExactMembers, 1e-10, adams: false);
    }

    private static void Reference(JarMembers jar, double[] deviates, Trace trace, double ours, int members, double tolerance, bool adams)
    {
        double[] celsius = jar.Climate.Celsius.ToArray();
        double[] spread = jar.Climate.Spread.ToArray();
        double[] hours = [.. trace.Days.Select(day => 24 * day)];
        double[][] constants = [.. Enumerable.Range(0, members).Select(m => jar.ConstantsOf(deviates.AsSpan(m * Deviate.Count, Deviate.Count)))];
        double worstPh = 0;
        double worstAcidity = 0;
        long calls = 0;
        double milliseconds = Fastest(tolerance < 1e-8 ? 1 : 3, () =>
        {
            calls = 0;
            for (int m = 0; m < members; m++)
            {
                (double[] ph, double[] acidity, long made) = CvodeReference.Instance.Solve(constants[m], celsius, spread, hours, tolerance, adams);
                calls += made;
                for (int i = 0; i < hours.Length; i++)
                {
                    worstPh = Math.Max(worstPh, Math.Abs(ph[i] - trace.Ph[(i * Members) + m]));
                    worstAcidity = Math.Max(worstAcidity, Math.Abs(acidity[i] - trace.Acidity[(i * Members) + m]));
                }
            }
        });
        Console.WriteLine($"  CVODE {(adams ? "Adams" : "BDF")} at {tolerance:0e0}: {milliseconds:0} ms, {calls / members} right-hand sides a "
            + $"member{(members == Members ? $": ratio {milliseconds / ours:0.0}" : $", {members} members only")}; ours differs by at most "
            + $"{worstPh:0.00000} pH, {worstAcidity:0.00000} %");
    }

    private static double Fastest(int repeats, Action action)
    {
        double fastest = double.MaxValue;
        for (int i = 0; i < repeats; i++)
        {
            // Processor time, not the wall's: a machine that does other work as well must not decide a ratio.
            TimeSpan start = Environment.CpuUsage.TotalTime;
            action();
            fastest = Math.Min(fastest, (Environment.CpuUsage.TotalTime - start).TotalMilliseconds);
        }
        return fastest;
    }

    private static TemperatureCourse Course(double noise) =>
        TemperatureCourse.FromSteps([.. Enumerable.Range(0, Days * 96).Select(i => TemperatureStep.Room(
            19 + (1.5 * Math.Sin(2 * Math.PI * i / 96)) + (noise * Philox.Normal(5, 1, 0, (uint)i))))], TypicalRoom.Usual);
}
