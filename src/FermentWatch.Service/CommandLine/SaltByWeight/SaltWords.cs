using System.Globalization;
using FermentWatch.Kinetics.Salt;

namespace FermentWatch.Service.CommandLine.SaltByWeight;

/// <summary>Why salt by the spoon is a range.</summary>
internal static class SaltWords
{
    public static string WhyARange(SaltKind kind)
    {
        SpoonMeasure spoon = SpoonMeasure.Of(kind);
        string weighs = string.Create(CultureInfo.InvariantCulture,
            $"a tablespoon of {kind.Words()} is published or was weighed as {spoon.LowGrams:0.##} to {spoon.HighGrams:0.##} g");
        string rule = kind == SaltKind.CoarseFlake ? "never measure flake salt by volume: weigh it" : "weigh it if you can";
        return $"{weighs}; {rule}";
    }
}
