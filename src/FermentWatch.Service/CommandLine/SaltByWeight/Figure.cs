using System.Globalization;

namespace FermentWatch.Service.CommandLine.SaltByWeight;

/// <summary>One figure of an answer.</summary>
/// <param name="Column">Its name for machines, with the unit.</param>
/// <param name="Value">The figure.</param>
/// <param name="Format">Digits worth printing.</param>
internal readonly record struct Figure(string Column, double Value, string Format = "0.##")
{
    /// <summary>The figure with its digits, in the invariant culture.</summary>
    public string Text => Value.ToString(Format, CultureInfo.InvariantCulture);
}
