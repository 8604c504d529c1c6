using System.Collections.ObjectModel;
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

    /// <summary>Shares of strong ions that a calibration tries, by the vegetable's name, in place of the entry's own; none in use.</summary>
    public IReadOnlyDictionary<string, double> TriedStrongIonShares { get; init; } = ReadOnlyDictionary<string, double>.Empty;

    /// <summary>Exchange between pieces and brine by <see cref="Cut"/>, 1/h.</summary>
    public required IReadOnlyList<double> ExchangePerHour { get; init; }

    /// <summary>Juice drawn from the vegetables at packing by <see cref="Cut"/>, share of their water.</summary>
    public required IReadOnlyList<double> DrawnJuice { get; init; }

    /// <summary>The values in use.</summary>
    public static ModelParameters Current { get; } = CalibratedParameters.Values;

    /// <summary>Share of the minerals' charge that nothing untold balances, of a vegetable.</summary>
    public double StrongIonShareOf(Vegetable vegetable) =>
        TriedStrongIonShares.TryGetValue(vegetable.Name, out double tried) ? tried : vegetable.StrongIonShare;
}
