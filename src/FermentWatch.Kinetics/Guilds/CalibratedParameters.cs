namespace FermentWatch.Kinetics.Guilds;

/// <summary>The calibrated values, as the calibration prints them (--code); not edited by hand.</summary>
internal static class CalibratedParameters
{
    public static ModelParameters Values { get; } = new()
    {
        Guilds =
        [
            new("starters", 0.6962, new(0.6458, 27.6, 38.29), 0.2644, 4.204, 0.0421,
                8.208, 0.005522, 0.006468, 1, 0.5),
            new("cold starters", 0.1289, new(-11.04, 19.97, 32.31), 0.7543, 4.204, 0.0421,
                8.208, 0.005522, 0.006468, 1, 0.5),
            new("finishers", 0.2435, new(3.673, 35.09, 41.09), 0.6974, 3.376, 0.09986,
                11.67, 0.01038, 0.008544, 1.9, 0.05),
            new("cold finishers", 0.1043, new(-3.663, 27.99, 36.54), 0.6974, 3.604, 0.07078,
                8.84, 0.01038, 0.008544, 1.9, 0.05),
        ],
        FirstCounts =
        [
            new(3.064, 3.064, 1.498, 1.42),
            new(4.825, 4.825, 2.903, 2.231),
            new(4.107, 4.107, 2.629, 2.089),
            new(3.55, 3.55, 1.9, 1.45),
        ],
        Lag = 1.758,
        PhSteepness = 5.871,
        HalfHexose = 0.004,
        LacticLimit = 0.5045,
        Crowding = 0.6233,
        AceticWeight = 0.46,
        SaltPower = 1.608,
        LowSaltPercent = 0.2,
        StrongShare = [0.8638, 0.821, 0.79, 0.8323, 0.8858, 0.7154, 0.7, 0.7154, 0.7, 0.75, 0.75, 0.75, 0.75, 0.75, 0.75, 0.75, 0.75, 0.75, 0.75, 0.75, 0.75, 0.75, 0.75, 0.75, 0.75],
        ExchangePerHour = [0.4, 0.15, 0.06, 0.04361, 0.01129],
        DrawnJuice = [0.5, 0.4, 0.3, 0.3, 0.02],
    };
}
