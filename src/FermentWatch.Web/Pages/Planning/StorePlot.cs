using System.Globalization;
using FermentWatch.Kitchen.Planning;
using FermentWatch.Web.Pages.Charts;
using NodaTime;

namespace FermentWatch.Web.Pages.Planning;

/// <summary>Where everything lies in the drawing of the store over a winter: servings that are ready, in the band of eight winters in ten.</summary>
public sealed class StorePlot
{
    private const double LeftMargin = 46, RightMargin = 14, RoomOfADate = 70;
    private readonly Plan _plan;
    private readonly LinearScale _time;

    /// <summary>Lays the drawing out.</summary>
    public StorePlot(Plan plan, double width)
    {
        (_plan, Width) = (plan, width);
        _time = new LinearScale(0, Math.Max(1, Period.DaysBetween(Levels[0].Date, Levels[^1].Date)), LeftMargin, width - RightMargin);
        Panel = ChartPanel.Of("servings ready", 26, 180, 0, Math.Max(1, Levels.Max(level => level.High)));
    }

    public double Width { get; }

    public double Height => Panel.Bottom + 34;

    public double Left => LeftMargin;

    public double Right => Width - RightMargin;

    public ChartPanel Panel { get; }

    /// <summary>The middle.</summary>
    public string Line => Svg.Points(Levels.Select(level => (X(level.Date), Panel.Values.At(level.Middle))));

    /// <summary>Eight winters in ten.</summary>
    public string Band => Svg.Band([.. Levels.Select(level => (X(level.Date), Panel.Values.At(level.Low), Panel.Values.At(level.High)))]);

    /// <summary>First days of months along the bottom.</summary>
    public IEnumerable<AxisMark> Dates
    {
        get
        {
            double last = double.NegativeInfinity;
            for (LocalDate date = Levels[0].Date.With(DateAdjusters.StartOfMonth).PlusMonths(1); date <= Levels[^1].Date; date = date.PlusMonths(1))
                if (X(date) is var x && x - last >= RoomOfADate && x < Right - (RoomOfADate / 3))
                {
                    last = x;
                    yield return new AxisMark(x, date.ToString("d MMM", CultureInfo.InvariantCulture));
                }
        }
    }

    private IReadOnlyList<StoreLevel> Levels => _plan.Spread.Levels;

    private double X(LocalDate date) => _time.At(Period.DaysBetween(Levels[0].Date, date));
}
