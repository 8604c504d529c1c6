using System.Globalization;
using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Produce;

namespace FermentWatch.Kinetics.Forecasting;

/// <summary>Names the model in use: the equations by hand, parameters and prior by what they print as.</summary>
internal static class ModelIdentity
{
    /// <summary>Raised by hand whenever equations, solver, sampler or a vegetable's figures change.</summary>
    private const string Equations = "4";

    /// <summary>
    /// The shares of strong ions of so many vegetables are part of the key. One that was added since is not: it must not draw the forecasts
    /// of all others anew.
    /// </summary>
    private const int KeyedVegetables = 25;

    /// <summary>The key that random numbers are drawn under, beside the jar's.</summary>
    public static ulong Key { get; } = KeyOf(ModelParameters.Current, new PriorSpread());

    /// <summary>For example <c>1-5f3a9c01</c>.</summary>
    public static string Version { get; } = string.Create(CultureInfo.InvariantCulture, $"{Equations}-{unchecked((uint)Key):x8}");

    internal static ulong KeyOf(ModelParameters model, PriorSpread spread)
    {
        IEnumerable<double> lists = model.ExchangePerHour.Concat(model.Rooms).Concat(model.DrawnJuice)
            .Concat(Vegetable.All.Take(KeyedVegetables).Select(model.StrongIonShareOf));
        string text = string.Join('|', Equations, spread, string.Join(',', model.Guilds), string.Join(',', model.FirstCounts),
            string.Join(',', lists.Select(value => value.ToString("R", CultureInfo.InvariantCulture))), Single(model));
        ulong key = 0;
        foreach (char letter in text)
            key = Philox.Key(key, letter);
        return key;
    }

    /// <summary>
    /// The single figures, in the words by which the first forecasts were drawn: a key that changed with a name in the source would draw
    /// every forecast anew.
    /// </summary>
    private static string Single(ModelParameters model) => string.Create(CultureInfo.InvariantCulture,
        $"ModelParameters {{ Guilds = FermentWatch.Kinetics.Guilds.Guild[], FirstCounts = FermentWatch.Kinetics.Guilds.FirstCounts[], "
        + $"Lag = {model.Lag}, PhSteepness = {model.PhSteepness}, HalfHexose = {model.HalfHexose}, LacticLimit = {model.LacticLimit}, "
        + $"Rooms = System.Double[], AceticWeight = {model.AceticWeight}, SaltPower = {model.SaltPower}, LowSaltPercent = {model.LowSaltPercent}, "
        + $"StrongShare = System.Double[], ExchangePerHour = System.Double[], DrawnJuice = System.Double[] }}");
}
