namespace FermentWatch.Kinetics.Simulation;

/// <summary>What a run writes down: the members at given times, and their first passages.</summary>
internal sealed class Trace
{
    public Trace(int members, double[] days, IReadOnlyList<Passage> passages)
    {
        Members = members;
        Days = days;
        Passages = passages;
        Ph = new double[days.Length * members];
        Acidity = new double[days.Length * members];
        Sourness = new double[days.Length * members];
        CentrePh = new double[days.Length * members];
        GasPerDay = new double[days.Length * members];
        Count = new double[days.Length * members];
        StarterShare = new double[days.Length * members];
    }

    public int Members { get; }

    /// <summary>Times written down, days after packing, rising; the run ends at the last.</summary>
    public double[] Days { get; }

    public IReadOnlyList<Passage> Passages { get; }

    /// <summary>pH of the brine, [time x members + member], as all below.</summary>
    public double[] Ph { get; }

    public double[] Acidity { get; }

    public double[] Sourness { get; }

    public double[] CentrePh { get; }

    /// <summary>Gas made by the heterofermentative starters, mol of carbon dioxide per litre of brine and day.</summary>
    public double[] GasPerDay { get; }

    /// <summary>All lactic acid bacteria, 1e9 CFU/mL.</summary>
    public double[] Count { get; }

    /// <summary>Heterofermentative starters, share of the count.</summary>
    public double[] StarterShare { get; }

    public ReadOnlySpan<double> At(double[] quantity, int time) => quantity.AsSpan(time * Members, Members);
}

/// <summary>Where the state variables stand. Outer is brine and drawn juice, inner what is still in the pieces.</summary>
internal static class State
{
    /// <summary>ln of the count, 1e9 CFU/mL, four guilds.</summary>
    public const int LnCount = 0;

    /// <summary>What is left of the lag, 1 to 0, four guilds.</summary>
    public const int LagLeft = 4;

    public const int HexoseOuter = 8;
    public const int LacticOuter = 9;
    public const int AceticOuter = 10;
    public const int HexoseInner = 11;
    public const int LacticInner = 12;
    public const int AceticInner = 13;

    public const int Count = 14;
}
