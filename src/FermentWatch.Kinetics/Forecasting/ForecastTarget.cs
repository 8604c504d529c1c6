using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace FermentWatch.Kinetics.Forecasting;

/// <summary>What the jar is waited for: a quantity and the level at which it is there.</summary>
/// <param name="Kind">The quantity.</param>
/// <param name="Level">pH 2.5 to 7, per cent lactic 0.05 to 4, or sourness index 0.5 to 300.</param>
public sealed record ForecastTarget(TargetKind Kind, double Level)
{
    /// <summary>The acid line.</summary>
    public static ForecastTarget AcidLine { get; } = new(TargetKind.Ph, 4.6);

    /// <summary>Reads <c>ph=4.6</c>, <c>acidity=1.5</c> or <c>sourness=60</c>.</summary>
    public static bool TryParse(string? text, [NotNullWhen(true)] out ForecastTarget? target, [NotNullWhen(false)] out Refusal? refusal)
    {
        string[] sides = (text ?? "").Split('=', 2, StringSplitOptions.TrimEntries);
        target = null;
        refusal = null;
        if (sides.Length == 2 && KindOf(sides[0]) is { } kind
            && double.TryParse(sides[1].TrimEnd('%'), NumberStyles.Float, CultureInfo.InvariantCulture, out double level))
        {
            target = new ForecastTarget(kind, level);
            refusal = target.Check();
            target = refusal is null ? target : null;
        }
        else
        {
            refusal = new("until", $"'{text}'", "ph=4.6, ph=4.0, acidity=1.5 or sourness=60 would be right");
        }
        return target is not null;
    }

    /// <summary>Null when the level can be used.</summary>
    public Refusal? Check()
    {
        (double low, double high, string name) = Kind switch
        {
            TargetKind.Ph => (2.5, 7.0, "ph"),
            TargetKind.AcidityPercentLactic => (0.05, 4.0, "acidity"),
            _ => (0.5, 300.0, "sourness"),
        };
        return Level >= low && Level <= high
            ? null
            : new("until", string.Create(CultureInfo.InvariantCulture, $"{name}={Level}"),
                string.Create(CultureInfo.InvariantCulture, $"{name} between {low} and {high} would be right"));
    }

    private static TargetKind? KindOf(string word) => word.ToUpperInvariant() switch
    {
        "PH" => TargetKind.Ph,
        "ACIDITY" => TargetKind.AcidityPercentLactic,
        "SOURNESS" => TargetKind.Sourness,
        _ => null,
    };
}
