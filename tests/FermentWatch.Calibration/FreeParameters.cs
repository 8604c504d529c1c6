using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Produce;

namespace FermentWatch.Calibration;

/// <summary>All numbers the fit may move.</summary>
internal static class FreeParameters
{
    private const string Limits = "growth_limits.csv";
    private const string Trial = "earlier trial, wide";
    private const string Counts = "growth_limits.csv: 2 to 4 on raw cabbage, 4 to 5 on raw napa";
    private const string Crowd = "kraut's 0.45 to 1 and kimchi's 2.3 mmol of acid/L/h at the counts of growth_limits.csv";
    private const string Minerals = "minerals less chloride, sulphate, nitrate: from memory";

    /// <summary>Salt of the kimchi whose souring times gave the cold starters' least temperature (growth_limits.csv, t_min_effective).</summary>
    private const double KimchiSaltPercent = 2.5;

    /// <summary>The laboratory strain's own optimum rate: no part of the model, but the growth rows need it.</summary>
    public const string BrothRate = "finishers in broth: optimum rate, 1/h";

    public static IReadOnlyList<FreeParameter> All { get; } =
    [
        Factor(0, "starters: optimum rate, 1/h", 0.5, 0.25, (g, v) => g with { OptimumRatePerHour = v }, Trial),
        Factor(1, "cold starters: optimum rate, 1/h", 0.12, 0.35, (g, v) => g with { OptimumRatePerHour = v }, Trial),
        Factor(2, "finishers: optimum rate, 1/h", 0.35, 0.3, (g, v) =>
            g with { OptimumRatePerHour = v }, "growth_limits.csv: 0.40 to 0.81 in milk and broth"),
        Factor(3, "cold finishers: optimum rate, 1/h", 0.15, 0.35, (g, v) => g with { OptimumRatePerHour = v }, Trial),
        Cardinal(0, "starters: least temperature, C", 1, 2, (t, v) => t with { Minimum = v }),
        Cardinal(0, "starters: best temperature, C", 29, 1.5, (t, v) => t with { Optimum = v }),
        Cardinal(0, "starters: most temperature, C", 38, 1.2, (t, v) => t with { Maximum = v }),
        Cardinal(1, "cold starters: least temperature at 2.5 % salt, C", -9.7, 1.5, (t, v) => t with { Minimum = v }),
        Cardinal(1, "cold starters: best temperature, C", 20, 2, (t, v) => t with { Optimum = v }),
        Cardinal(1, "cold starters: most temperature, C", 33, 2, (t, v) => t with { Maximum = v }),
        Cardinal(2, "finishers: least temperature, C", 4.5, 2.5, (t, v) => t with { Minimum = v }),
        Cardinal(2, "finishers: best temperature, C", 35, 1, (t, v) => t with { Optimum = v }),
        Cardinal(2, "finishers: most temperature, C", 41.5, 0.8, (t, v) => t with { Maximum = v }),
        Cardinal(3, "cold finishers: least temperature, C", -3, 1.5, (t, v) => t with { Minimum = v }),
        Cardinal(3, "cold finishers: best temperature, C", 28, 2, (t, v) => t with { Optimum = v }),
        Cardinal(3, "cold finishers: most temperature, C", 37, 1.5, (t, v) => t with { Maximum = v }),
        Both(0, "starters: pH that halves growth", 4.4, 0.2, isFactor: false, (g, v) => g with { HalfPh = v }, Limits),
        One(2, "finishers: pH that halves growth", 3.45, 0.06, (g, v) => g with { HalfPh = v }, Limits),
        One(3, "cold finishers: pH that halves growth", 3.7, 0.15, (g, v) => g with { HalfPh = v }, Trial),
        Both(0, "starters: acid that halves growth, mol/L", 0.055, 0.3, isFactor: true, (g, v) => g with { HalfAcidMolesPerLitre = v }, Limits),
        Factor(2, "finishers: acid that halves growth, mol/L", 0.09, 0.15, (g, v) => g with { HalfAcidMolesPerLitre = v }, Limits),
        Factor(3, "cold finishers: acid that halves growth, mol/L", 0.08, 0.25, (g, v) => g with { HalfAcidMolesPerLitre = v }, Trial),
        Both(0, "starters: hexose for growth, mol/L per 1e9 CFU/mL", 0.006, 0.4, isFactor: true, (g, v) =>
            g with { GrowthHexose = v }, "0.3 g dry mass per 1e9 CFU/mL and 20 g a mol of hexose: from memory"),
        Both(2, "finishers: hexose for growth, mol/L per 1e9 CFU/mL", 0.012, 0.4, isFactor: true, (g, v) =>
            g with { GrowthHexose = v }, "0.3 g dry mass per 1e9 CFU/mL and 25 g a mol of hexose: from memory"),
        Both(0, "starters: hexose without growth, mol/L/h per 1e9 CFU/mL", 0.0015, 0.4, isFactor: true, (g, v) =>
            g with { MaintenanceHexosePerHour = v }, Crowd),
        Both(2, "finishers: hexose without growth, mol/L/h per 1e9 CFU/mL", 0.002, 0.4, isFactor: true, (g, v) =>
            g with { MaintenanceHexosePerHour = v }, Crowd),
        .. CountsOf(FloraKind.Head, "head", 3.4, 2.0, 1.7),
        .. CountsOf(FloraKind.Leaf, "leaf", 4.5, 2.8, 2.3),
        .. CountsOf(FloraKind.Root, "root", 4.0, 2.8, 2.3),
        new("lag, rate x time", 2.0, 0.3, true, (m, v) => m with { Lag = v }, "Baranyi and Roberts 1994: 1 to 4 is usual, from memory"),
        new("pH steepness, per pH", 4.0, 0.2, true, (m, v) => m with { PhSteepness = v }, Trial),
        Both(0, "starters: salt limit, %", 8.5, 0.5, isFactor: false, (g, v) => g with { SaltLimitPercent = v }, Limits),
        One(2, "finishers: salt limit, %", 11.8, 0.5, (g, v) => g with { SaltLimitPercent = v }, Limits),
        One(3, "cold finishers: salt limit, %", 9, 0.7, (g, v) => g with { SaltLimitPercent = v }, Trial),
        Factor(0, "starters: salt raises the least temperature, C per %", 0.3, 0.6, (g, v) => g with { SaltChill = v }, "wide, as for the finishers"),
        Factor(1, "cold starters: salt raises the least temperature, C per %", 1, 0.6, ChilledBySalt, "wide: salt in the cold slows kimchi"),
        Both(2, "finishers: salt raises the least temperature, C per %", 0.5, 0.6, isFactor: true, (g, v) =>
            g with { SaltChill = v }, "wide: none to what closes 5 C at 7 %"),
        new("lactate that ends growth, mol/L", 0.6, 0.5, true, (m, v) => m with { LacticLimit = v }, "wide: above what kraut reaches"),
        new(BrothRate, 0.5, 0.4, true, (m, _) => m, Limits),
        new("salt power", 2.0, 0.3, true, (m, v) => m with { SaltPower = v }, "no effect to 3 %, K31; zero at the limit"),
        Strong("cabbage", 0.88, 0.05), Strong("red cabbage", 0.85, 0.07), Strong("napa", 0.75, 0.08), Strong("carrot", 0.80, 0.07),
        Strong("cucumber", 0.80, 0.10),
        // One species: one share for both.
        Strong("radish and daikon", 0.6, 0.10, "radish", "daikon"),
        Exchange(Cut.Pieces, "pieces: exchange, 1/h", 0.06, 0.4), Exchange(Cut.Whole, "whole: exchange, 1/h", 0.012, 0.4),
        Room("heads", 0.25, FloraKind.Head), Room("leaves", 1, FloraKind.Leaf), Room("roots and fruit", 0.5, FloraKind.Root, FloraKind.Fruit),
    ];

    /// <summary>The broth's optimum rate at so many deviates.</summary>
    public static double BrothRateAt(ReadOnlySpan<double> deviates)
    {
        int index = All.TakeWhile(parameter => parameter.Name != BrothRate).Count();
        return All[index].ValueAt(deviates[index]);
    }

    /// <summary>The model at so many prior standard deviations from the prior means.</summary>
    public static ModelParameters ModelAt(ReadOnlySpan<double> deviates)
    {
        ModelParameters model = EarlierTrial.Model;
        for (int i = 0; i < All.Count; i++)
            model = All[i].Put(model, All[i].ValueAt(deviates[i]));
        return model;
    }

    private static FreeParameter Factor(int guild, string name, double prior, double spread, Func<Guild, double, Guild> put, string source) =>
        new(name, prior, spread, true, (m, v) => With(m, guild, g => put(g, v)), source);

    private static FreeParameter One(int guild, string name, double prior, double spread, Func<Guild, double, Guild> put, string source) =>
        new(name, prior, spread, false, (m, v) => With(m, guild, g => put(g, v)), source);

    /// <summary>The same value for a guild and its cold-loving kin.</summary>
    private static FreeParameter Both(int guild, string name, double prior, double spread, bool isFactor, Func<Guild, double, Guild> put,
        string source) =>
        new(name, prior, spread, isFactor, (m, v) => With(With(m, guild, g => put(g, v)), guild + 1, g => put(g, v)), source);

    private static FreeParameter Cardinal(int guild, string name, double prior, double spread, Func<CardinalTemperatures, double,
        CardinalTemperatures> put) =>
        new(name, prior, spread, false, (m, v) => With(m, guild, g => g with { Temperature = put(g.Temperature, v) }), Limits);

    private static IEnumerable<FreeParameter> CountsOf(FloraKind kind, string name, double starters, double finishers, double coldFinishers)
    {
        yield return new($"{name}: starters at first, log10 CFU/mL", starters, 0.5, false, (m, v) =>
            First(m, kind, c => c with { Starters = v, ColdStarters = v }), Counts);
        yield return new($"{name}: finishers at first, log10 CFU/mL", finishers, 1, false, (m, v) =>
            First(m, kind, c => c with { Finishers = v }), Counts);
        yield return new($"{name}: cold finishers at first, log10 CFU/mL", coldFinishers, 1, false, (m, v) =>
            First(m, kind, c => c with { ColdFinishers = v }), Counts);
    }

    private static FreeParameter Strong(string name, double prior, double spread, params string[] kin) =>
        new($"{name}: share of strong ions", prior, spread, false, (m, v) => Tried(m, kin.Length > 0 ? kin : [name], v), Minerals);

    private static FreeParameter Exchange(Cut cut, string name, double prior, double spread) =>
        new(name, prior, spread, true, (m, v) => m with { ExchangePerHour = Replaced(m.ExchangePerHour, (int)cut, v) },
        "hours for shreds, a day for slices, days for whole ones");

    private static FreeParameter Room(string name, double prior, params FloraKind[] kinds) => new(
        $"room of a guild on {name}, 1e9 CFU/mL", prior, 0.3, true, (m, v) =>
            m with { Rooms = [.. m.Rooms.Select((room, kind) => kinds.Contains((FloraKind)kind) ? v : room)] },
        "growth_limits.csv: 8.3 to 9 log10, cabbage's low and kimchi's high");

    /// <summary>The least temperature before it is one of kimchi's souring times, at kimchi's salt.</summary>
    private static Guild ChilledBySalt(Guild guild, double chill) =>
        guild with { SaltChill = chill, Temperature = guild.Temperature with { Minimum = guild.Temperature.Minimum - (KimchiSaltPercent * chill) } };

    private static ModelParameters With(ModelParameters model, int guild, Func<Guild, Guild> change) =>
        model with { Guilds = Replaced(model.Guilds, guild, change(model.Guilds[guild])) };

    private static ModelParameters Tried(ModelParameters model, string[] vegetables, double share) => model with
    {
        TriedStrongIonShares = new Dictionary<string, double>(model.TriedStrongIonShares.Where(tried => !vegetables.Contains(tried.Key))
            .Concat(vegetables.Select(each => KeyValuePair.Create(each, share)))),
    };

    private static ModelParameters First(ModelParameters model, FloraKind kind, Func<FirstCounts, FirstCounts> change) =>
        model with { FirstCounts = Replaced(model.FirstCounts, (int)kind, change(model.FirstCounts[(int)kind])) };

    private static T[] Replaced<T>(IReadOnlyList<T> list, int index, T value)
    {
        T[] copy = [.. list];
        copy[index] = value;
        return copy;
    }
}
