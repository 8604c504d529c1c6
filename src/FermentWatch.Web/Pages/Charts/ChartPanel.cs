namespace FermentWatch.Web.Pages.Charts;

/// <summary>One strip of the picture with its own value axis.</summary>
/// <param name="Title">What it shows, with the unit.</param>
/// <param name="Top">Upper edge, picture units.</param>
/// <param name="Bottom">Lower edge.</param>
/// <param name="Values">The value axis.</param>
/// <param name="Marks">Its labelled values.</param>
public sealed record ChartPanel(string Title, double Top, double Bottom, LinearScale Values, IReadOnlyList<AxisMark> Marks)
{
    /// <summary>A strip for a span of values.</summary>
    public static ChartPanel Of(string title, double top, double height, double low, double high)
    {
        var values = new LinearScale(low, high, top + height, top);
        var marks = NiceTicks.Within(low, high, 4).Select(tick => new AxisMark(values.At(tick), Svg.Number(tick)));
        return new ChartPanel(title, top, top + height, values, [.. marks]);
    }
}
