using FermentWatch.Kinetics.Produce;

namespace FermentWatch.Kinetics.Guilds;

/// <summary>Every number of the ferment model; PARAMETERS.md tells where each comes from.</summary>
internal sealed record ModelParameters
{
    public const int GuildCount = 4;

    /// <summary>Starters, cold starters, finishers, cold finishers.</summary>
    public required IReadOnlyList<Guild> Guilds { get; init; }

    /// <summary>First counts by kind of vegetable, in the order of <see cref="FloraKind"/>.</summary>
    public required IReadOnlyList<FirstCounts> FirstCounts { get; init; }

    /// <summary>Lag as rate times time (Baranyi and Roberts 1994), no unit.</summary>
    public required double Lag { get; init; }

    /// <summary>Steepness of the pH term, per pH unit, base 10.</summary>
    public required double PhSteepness { get; init; }

    /// <summary>Hexose at which growth is halved, mol/L.</summary>
    public required double HalfHexose { get; init; }

    /// <summary>Lactate, in whatever form, at which growth ends, mol/L.</summary>
    public required double LacticLimit { get; init; }

    /// <summary>Count at which a guild's growth ends for want of room by <see cref="FloraKind"/>, 1e9 CFU/mL.</summary>
    public required IReadOnlyList<double> Rooms { get; init; }

    /// <summary>Weight of undissociated acetic acid against lactic.</summary>
    public required double AceticWeight { get; init; }

    /// <summary>Power of the salt term.</summary>
    public required double SaltPower { get; init; }

    /// <summary>Salt below which other flora keeps up, per cent.</summary>
    public required double LowSaltPercent { get; init; }

    /// <summary>
    /// Share of the minerals' charge that chloride, sulphate and nitrate do not balance, by <see cref="Vegetable.All"/>.
    /// </summary>
    public required IReadOnlyList<double> StrongShare { get; init; }

    /// <summary>Exchange between pieces and brine by <see cref="Cut"/>, 1/h.</summary>
    public required IReadOnlyList<double> ExchangePerHour { get; init; }

    /// <summary>Juice drawn from the vegetables at packing by <see cref="Cut"/>, share of their water.</summary>
    public required IReadOnlyList<double> DrawnJuice { get; init; }

    /// <summary>The earlier trial's values, the start of the calibration.</summary>
    public static ModelParameters EarlierTrial { get; } = new()
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
        StrongShare = [0.88, 0.85, 0.75, 0.80, 0.80, 0.60, 0.70, 0.55, 0.70, 0.75, .. Enumerable.Repeat(0.75, Vegetable.All.Count - 10)],
        ExchangePerHour = [0.4, 0.15, 0.06, 0.035, 0.012],
        DrawnJuice = [0.5, 0.4, 0.3, 0.3, 0.02],
    };

    /// <summary>The values in use.</summary>
    public static ModelParameters Current { get; } = CalibratedParameters.Values;
}
