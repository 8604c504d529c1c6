namespace FermentWatch.Kinetics.Guilds;

/// <summary>The calibrated values, as the calibration prints them (--code); not edited by hand.</summary>
internal static class CalibratedParameters
{
    public static ModelParameters Values { get; } = new()
    {
        Guilds =
        [
            new("starters", 0.6422, new(0.1365, 27.24, 38.45), 0.3072, 4.162, 0.04422,
                8.255, 0.006616, 0.003957, 1, 0.5),
            new("cold starters", 0.1431, new(-12.87, 20.82, 32.84), 1.285, 4.162, 0.04422,
                8.255, 0.006616, 0.003957, 1, 0.5),
            new("finishers", 0.2314, new(3.678, 35.65, 41.36), 0.7023, 3.415, 0.09505,
                11.8, 0.01247, 0.004852, 1.9, 0.05),
            new("cold finishers", 0.1964, new(-2.858, 31.88, 36.12), 0.7023, 3.288, 0.1171,
                8.962, 0.01247, 0.004852, 1.9, 0.05),
        ],
        FirstCounts =
        [
            new(3.543, 3.543, 1.491, 3.872),
            new(4.494, 4.494, 2.877, 2.311),
            new(4.217, 4.217, 2.747, 1.447),
            new(3.55, 3.55, 1.9, 1.45),
        ],
        Lag = 1.863,
        PhSteepness = 5.742,
        HalfHexose = 0.004,
        LacticLimit = 0.5185,
        AceticWeight = 0.46,
        SaltPower = 1.694,
        LowSaltPercent = 0.2,
        Rooms = [0.3398, 1.125, 0.9047, 0.9047],
        ExchangePerHour = [0.4, 0.15, 0.06, 0.0445, 0.01315],
        DrawnJuice = [0.5, 0.4, 0.3, 0.3, 0.02],
    };
}
