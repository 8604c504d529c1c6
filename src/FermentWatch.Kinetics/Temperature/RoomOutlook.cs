namespace FermentWatch.Kinetics.Temperature;

/// <summary>
/// Forecast of a room from its own past: its mean day, plus the present level drifting back to its own mean, with a spread
/// that grows to the room's own.
/// </summary>
public sealed class RoomOutlook
{
    private const double DriftBackHours = 40;
    private const int LevelSteps = TemperatureCourse.StepsPerDay;

    /// <summary>Older days tell of another season.</summary>
    private const int MostSteps = 21 * TemperatureCourse.StepsPerDay;

    private readonly RoomCycle _cycle;
    private readonly int _now;
    private readonly double _level;
    private readonly bool _insideJar;

    private RoomOutlook(RoomCycle cycle, int now, double level, bool insideJar)
    {
        _cycle = cycle;
        _now = now;
        _level = level;
        _insideJar = insideJar;
    }

    /// <summary>Learns from closed 15-minute means, oldest first, the last one being the newest; null where there is none.</summary>
    /// <param name="past">Means, Celsius; those outside -5 to 45 are left out. The last three weeks count; none is allowed.</param>
    /// <param name="typical">What the household says of the place: all there is when nothing was measured.</param>
    /// <param name="insideJar">Whether they were measured in a jar.</param>
    public static RoomOutlook Learn(IReadOnlyList<double?> past, TypicalRoom typical, bool insideJar = false)
    {
        double?[] counted = [.. past.Skip(Math.Max(0, past.Count - MostSteps)).Select(value =>
            value is { } celsius && TemperatureStep.IsInRange(celsius) ? value : null)];
        RoomCycle cycle = RoomCycle.Learn(counted, typical);
        double level = 0;
        double weight = 0;
        for (int back = 0; back < LevelSteps && back < counted.Length; back++)
        {
            int i = counted.Length - 1 - back;
            if (counted[i] is { } celsius)
            {
                level += celsius - cycle.At(i);
                weight++;
            }
        }
        return new(cycle, counted.Length, weight > 0 ? level / weight : 0, insideJar);
    }

    /// <summary>The next steps of a quarter of an hour.</summary>
    public TemperatureStep[] Ahead(int steps)
    {
        var ahead = new TemperatureStep[steps];
        for (int k = 0; k < steps; k++)
        {
            double kept = Math.Exp(-(k + 1) / (4 * DriftBackHours));
            double own = _insideJar ? TemperatureStep.JarSensorSpreadCelsius : TemperatureStep.RoomSensorSpreadCelsius;
            double drift = _cycle.LevelSpreadCelsius * Math.Sqrt(1 - (kept * kept));
            double celsius = Math.Clamp(_cycle.At(_now + k) + (kept * _level), TemperatureStep.LowestCelsius, TemperatureStep.HighestCelsius);
            ahead[k] = new(celsius, Math.Sqrt((own * own) + (drift * drift)), _insideJar);
        }
        return ahead;
    }
}
