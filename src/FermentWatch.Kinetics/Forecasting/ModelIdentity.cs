using System.Globalization;
using FermentWatch.Kinetics.Ensemble;
using FermentWatch.Kinetics.Guilds;

namespace FermentWatch.Kinetics.Forecasting;

/// <summary>Names the model in use: the equations by hand, parameters and prior by what they print as.</summary>
internal static class ModelIdentity
{
    /// <summary>Raised by hand whenever equations, solver or sampler change.</summary>
    private const string Equations = "4";

    /// <summary>The key that random numbers are drawn under, beside the jar's.</summary>
    public static ulong Key { get; } = KeyOf(ModelParameters.Current, new PriorSpread());

    /// <summary>For example <c>1-5f3a9c01</c>.</summary>
    public static string Version { get; } = string.Create(CultureInfo.InvariantCulture, $"{Equations}-{unchecked((uint)Key):x8}");

    private static ulong KeyOf(ModelParameters model, PriorSpread spread)
    {
        string text = string.Join('|', Equations, spread, string.Join(',', model.Guilds), string.Join(',', model.FirstCounts),
            string.Join(',', model.ExchangePerHour.Concat(model.Rooms).Concat(model.DrawnJuice).Concat(model.StrongShare).Select(value => value.ToString("R", CultureInfo.InvariantCulture))),
            model with { Guilds = [], FirstCounts = [], Rooms = [], ExchangePerHour = [], DrawnJuice = [], StrongShare = [] });
        ulong key = 0;
        foreach (char letter in text)
            key = Philox.Key(key, letter);
        return key;
    }
}
