using FermentWatch.Kinetics.Guilds;

namespace FermentWatch.Calibration;

/// <summary>The earlier trial's values, the start of the calibration.</summary>
internal static class EarlierTrial
{
    public static ModelParameters Model { get; } = new()
    {
        Guilds =
        [
            new("starters", 0.42, new(0, 28, 38), 0, 4.38, 0.057, 9, 0.02, 0.006, 1.0, 0.5),
            new("cold starters", 0.12, new(-8.6, 20, 32), 0, 4.38, 0.057, 9, 0.02, 0.006, 1.0, 0.5),
            new("finishers", 0.23, new(2.1, 34, 43), 0, 3.30, 0.111, 12, 0.02, 0.001, 1.9, 0.05),
            new("cold finishers", 0.13, new(-3, 27, 36), 0, 3.71, 0.079, 9, 0.02, 0.001, 1.9, 0.05),
        ],
        FirstCounts = [new(3.55, 3.55, 1.9, 1.45), new(4.7, 4.7, 2.5, 2.0), new(4.7, 4.7, 2.5, 2.0), new(3.55, 3.55, 1.9, 1.45)],
        Lag = 2.0,
        PhSteepness = 4.2,
        HalfHexose = 0.004,
        LacticLimit = 10,
        Rooms = [2, 2, 2, 2],
        AceticWeight = 0.46,
        SaltPower = 2,
        LowSaltPercent = 0.2,
        TriedStrongIonShares = new Dictionary<string, double>
        {
            ["cabbage"] = 0.88, ["red cabbage"] = 0.85, ["napa"] = 0.75, ["carrot"] = 0.80, ["cucumber"] = 0.80,
            ["daikon"] = 0.60, ["radish"] = 0.55,
        },
        ExchangePerHour = [0.4, 0.15, 0.06, 0.035, 0.012],
        DrawnJuice = [0.5, 0.4, 0.3, 0.3, 0.02],
    };
}
