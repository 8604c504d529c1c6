namespace FermentWatch.Kinetics.Guilds;

/// <summary>The calibrated values, as the calibration prints them (--code); not edited by hand.</summary>
internal static class CalibratedParameters
{
    public static ModelParameters Values { get; } = new()
    {
        Guilds =
        [
            new("starters", 0.3693, new(-0.6579, 27.34, 38.52), 0.2102, 4.314, 0.04784,
                8.133, 0.02687, 0.01413, 1, 0.5),
            new("cold starters", 0.1114, new(-9.753, 20.39, 32.88), 0.2102, 4.314, 0.04784,
                8.133, 0.02687, 0.01413, 1, 0.5),
            new("finishers", 0.2895, new(3.548, 33.9, 41.8), 0.7314, 3.479, 0.1063,
                11.77, 0.01172, 0.006531, 1.9, 0.05),
            new("cold finishers", 0.1265, new(-3.1, 27.97, 36.97), 0.7314, 3.653, 0.08076,
                8.974, 0.01172, 0.006531, 1.9, 0.05),
        ],
        FirstCounts =
        [
            new(3.382, 3.382, 1.79, 1.656),
            new(4.496, 4.496, 3.122, 2.281),
            new(4.496, 4.496, 3.122, 2.281),
            new(3.55, 3.55, 1.9, 1.45),
        ],
        Lag = 1.915,
        PhSteepness = 5.686,
        HalfHexose = 0.004,
        LacticLimit = 0.51,
        Crowding = 3.189,
        AceticWeight = 0.46,
        SaltPower = 1.941,
        LowSaltPercent = 0.2,
        StrongShare = [0.8793, 0.8888, 0.7674, 0.8445, 0.8832, 0.6947, 0.7, 0.6947, 0.7, 0.75],
        ExchangePerHour = [0.4, 0.15, 0.06, 0.05033, 0.0115],
        DrawnJuice = [0.5, 0.4, 0.3, 0.3, 0.02],
    };
}
