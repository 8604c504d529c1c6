using System.Globalization;

namespace FermentWatch.Web.Pages.Charts;

/// <summary>Writes numbers and points as SVG reads them.</summary>
public static class Svg
{
    /// <summary>A number with at most two decimals and a point.</summary>
    public static string Number(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>Points of a polyline.</summary>
    public static string Points(IEnumerable<(double X, double Y)> points) =>
        string.Join(' ', points.Select(point => string.Create(CultureInfo.InvariantCulture, $"{point.X:0.#},{point.Y:0.#}")));

    /// <summary>The outline of a band between its lower and its upper edge.</summary>
    public static string Band(IReadOnlyList<(double X, double Low, double High)> edges) =>
        Points(edges.Select(edge => (edge.X, edge.High)).Concat(edges.Reverse().Select(edge => (edge.X, edge.Low))));
}
