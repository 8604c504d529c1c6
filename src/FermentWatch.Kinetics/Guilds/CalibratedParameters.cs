namespace FermentWatch.Kinetics.Guilds;

/// <summary>The calibrated values, as the calibration prints them (--code); not edited by hand.</summary>
internal static class CalibratedParameters
{
    public static ModelParameters Values { get; } = new()
    {
        Guilds =
        [
            new("starters", 0.3761, new(-0.8037, 27.32, 38.49), 0.2373, 4.31, 0.05171,
                8.077, 0.02672, 0.0142, 1, 0.5),
            new("cold starters", 0.1128, new(-9.869, 20.53, 33.11), 0.2373, 4.31, 0.05171,
                8.077, 0.02672, 0.0142, 1, 0.5),
            new("finishers", 0.2917, new(2.488, 34.22, 41.83), 0.6451, 3.467, 0.1083,
                11.78, 0.01134, 0.006246, 1.9, 0.05),
            new("cold finishers", 0.1281, new(-3.027, 28, 36.93), 0.6451, 3.641, 0.08071,
                8.969, 0.01134, 0.006246, 1.9, 0.05),
        ],
        FirstCounts =
        [
            new(3.352, 3.352, 1.677, 1.604),
            new(4.443, 4.443, 3.182, 2.277),
            new(4.443, 4.443, 3.182, 2.277),
            new(3.55, 3.55, 1.9, 1.45),
        ],
        Lag = 1.884,
        PhSteepness = 5.922,
        HalfHexose = 0.004,
        LacticLimit = 0.4697,
        Crowding = 3.206,
        AceticWeight = 0.46,
        SaltPower = 1.871,
        LowSaltPercent = 0.2,
        StrongShare = [0.8718, 0.8818, 0.7705, 0.8316, 0.8733, 0.6917, 0.7, 0.6917, 0.7, 0.75],
        ExchangePerHour = [0.4, 0.15, 0.06, 0.05352, 0.01211],
        DrawnJuice = [0.5, 0.4, 0.3, 0.3, 0.02],
    };
}
