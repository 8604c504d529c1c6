using System.Globalization;
using FermentWatch.Acts.Histories;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Web.Pages.Charts;

/// <summary>Where everything lies in the drawing of what was measured over a span: a mean as a line, in the band of smallest and largest.</summary>
public sealed class SpanPlot
{
    private const double LeftMargin = 46, RightMargin = 14, RoomOfADate = 84;
    private static readonly Duration OrdinaryGap = Duration.FromHours(3);
    private readonly HistoryAnswer _answer;
    private readonly DateTimeZone _zone;
    private readonly Func<double, double> _shown;
    private readonly LinearScale _time;

    /// <summary>Lays the drawing out; there is at least one point.</summary>
    public SpanPlot(HistoryAnswer answer, Household household, double width)
    {
        (_answer, _zone, Width) = (answer, household.Zone, width);
        MeasuredQuantity quantity = MeasuredQuantity.Of(answer.Span.Quantity);
        _shown = value => quantity.IsInUnitOfHousehold ? MeasureWords.InUnit(value, household.TemperatureUnit) : value;
        _time = new LinearScale(Seconds(answer.Span.From), Seconds(answer.Span.Until), LeftMargin, width - RightMargin);
        double low = _shown(Points.Min(point => point.Minimum)), high = _shown(Points.Max(point => point.Maximum));
        double margin = Math.Max(0.5, (high - low) * 0.08);
        string unit = quantity.IsInUnitOfHousehold ? MeasureWords.Symbol(household.TemperatureUnit) : quantity.StoredUnit.Label;
        Panel = ChartPanel.Of(unit, 26, 210, low - margin, high + margin);
    }

    public double Width { get; }

    public double Height => Panel.Bottom + 34;

    public double Left => LeftMargin;

    public double Right => Width - RightMargin;

    public ChartPanel Panel { get; }

    /// <summary>Lines of the mean, in pieces where nothing was measured for some hours.</summary>
    public IEnumerable<string> Lines => Pieces.Select(piece => Svg.Points(piece.Select(point => (X(point), Y(point.Value)))));

    /// <summary>Bands of smallest and largest.</summary>
    public IEnumerable<string> Bands => _answer.Measured.Width is null ? []
        : Pieces.Select(piece => Svg.Band([.. piece.Select(point => (X(point), Y(point.Minimum), Y(point.Maximum)))]));

    /// <summary>Dates along the bottom, with the year.</summary>
    public IEnumerable<AxisMark> Dates
    {
        get
        {
            LocalDate first = _answer.Span.From.InZone(_zone).Date, last = _answer.Span.Until.InZone(_zone).Date;
            int step = Math.Max(1, (int)Math.Ceiling((Period.DaysBetween(first, last) + 1) * RoomOfADate / (Right - Left)));
            for (LocalDate date = first.PlusDays(1); date <= last; date = date.PlusDays(step))
                if (_time.At(Seconds(_zone.AtStartOfDay(date).ToInstant())) is var x && x < Right - (RoomOfADate / 3))
                    yield return new AxisMark(x, date.ToString("d MMM uuuu", CultureInfo.InvariantCulture));
        }
    }

    private IReadOnlyList<ReadingMean> Points => _answer.Measured.Points;

    private Duration Half => (_answer.Measured.Width ?? Duration.Zero) / 2;

    private IEnumerable<List<ReadingMean>> Pieces
    {
        get
        {
            Duration longest = Duration.Max(OrdinaryGap, (_answer.Measured.Width ?? Duration.Zero) * 2.5);
            var piece = new List<ReadingMean>();
            foreach (ReadingMean point in Points)
            {
                if (piece.Count > 0 && point.Start - piece[^1].Start > longest)
                {
                    yield return piece;
                    piece = [];
                }
                piece.Add(point);
            }
            if (piece.Count > 0)
                yield return piece;
        }
    }

    private double X(ReadingMean point) => _time.At(Seconds(point.Start + Half));

    private double Y(double value) => Panel.Values.At(_shown(value));

    private static double Seconds(Instant instant) => instant.ToUnixTimeTicks() / (double)NodaConstants.TicksPerSecond;
}
