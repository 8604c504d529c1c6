namespace FermentWatch.Kinetics.Temperature;

/// <summary>A room's mean day, and how far its level strays from it.</summary>
internal sealed class RoomCycle
{
    private readonly double[] _day;

    private RoomCycle(double[] day, double levelSpread)
    {
        _day = day;
        LevelSpreadCelsius = levelSpread;
    }

    public double LevelSpreadCelsius { get; }

    public static RoomCycle Learn(ReadOnlySpan<double?> counted, TypicalRoom fallback)
    {
        double sum = 0;
        int count = 0;
        foreach (double? value in counted)
        {
            if (value is { } celsius)
            {
                sum += celsius;
                count++;
            }
        }
        double mean = count > 0 ? sum / count : fallback.MeanCelsius;
        double[] day = new double[TemperatureCourse.StepsPerDay];
        // Each time of day leans on the mean until it has been seen a few times, so that one odd night is no cycle.
        const double Prior = 2;
        for (int slot = 0; slot < day.Length; slot++)
        {
            double slotSum = Prior * mean;
            double slotCount = Prior;
            for (int i = slot; i < counted.Length; i += day.Length)
            {
                if (counted[i] is { } celsius)
                {
                    slotSum += celsius;
                    slotCount++;
                }
            }
            day[slot] = slotSum / slotCount;
        }
        return new(day, LevelSpread(counted, day, count, fallback));
    }

    public double At(int index) => _day[((index % _day.Length) + _day.Length) % _day.Length];

    private static double LevelSpread(ReadOnlySpan<double?> counted, double[] day, int count, TypicalRoom fallback)
    {
        // The household's own words count as two days of measuring.
        const double PriorSteps = 2 * TemperatureCourse.StepsPerDay;
        double squares = PriorSteps * fallback.SpreadCelsius * fallback.SpreadCelsius;
        for (int i = 0; i < counted.Length; i++)
        {
            if (counted[i] is { } celsius)
                squares += (celsius - day[i % day.Length]) * (celsius - day[i % day.Length]);
        }
        return Math.Sqrt(squares / (PriorSteps + count));
    }
}
