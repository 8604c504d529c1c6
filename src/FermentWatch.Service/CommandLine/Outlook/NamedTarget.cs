using System.Diagnostics.CodeAnalysis;
using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Jars;

namespace FermentWatch.Service.CommandLine.Outlook;

/// <summary>A level with the words somebody asked for it.</summary>
/// <param name="Name">As typed, without spaces around it.</param>
/// <param name="Level">The level.</param>
internal sealed record NamedTarget(string Name, ForecastTarget Level)
{
    private const string SournessPrefix = "sourness=";

    /// <summary>Reads <c>ph=4.6</c>, <c>acidity=1.5</c>, <c>sourness=60</c>, or a step of sourness in words with or without
    /// <c>sourness=</c>.</summary>
    public static bool TryRead(string typed, [NotNullWhen(true)] out NamedTarget? target, [NotNullWhen(false)] out Refusal? refusal)
    {
        string name = typed.Trim();
        string words = name.StartsWith(SournessPrefix, StringComparison.OrdinalIgnoreCase) ? name[SournessPrefix.Length..] : name;
        SournessLevel? step = SournessLevel.All.FirstOrDefault(level =>
            level.Words.Equals(words.Replace('-', ' '), StringComparison.OrdinalIgnoreCase));
        refusal = null;
        if (step is not null)
            target = new NamedTarget(name, new ForecastTarget(TargetKind.AcidityPercentLactic, step.AcidityPercentLactic));
        else
            target = ForecastTarget.TryParse(name, out ForecastTarget? level, out refusal) ? new NamedTarget(name, level) : null;
        return target is not null;
    }
}
