using System.Globalization;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Words;

namespace FermentWatch.Web.Pages.Charts;

/// <summary>Where everything lies in the picture of a jar's course: temperature, pH and acidity over one time axis.</summary>
public sealed class CoursePlot
{
    private const double LeftMargin = 38, RightMargin = 14, PanelGap = 40, HalfADate = 10, OrdinaryRoomCelsius = 20;
    private readonly CourseData _data;
    private readonly LinearScale _days;

    /// <summary>Lays the picture out.</summary>
    /// <param name="data">What to show.</param>
    /// <param name="width">Picture width in its own units; text is 13 of them high.</param>
    public CoursePlot(CourseData data, double width)
    {
        _data = data;
        Width = width;
        _days = new LinearScale(0, data.LastDay, LeftMargin, width - RightMargin);
        double[] celsius = [.. data.Measured.Select(point => point.Celsius).Concat(Shown.Select(point => point.JarCelsius))];
        double coldest = celsius.DefaultIfEmpty(OrdinaryRoomCelsius).Min(), warmest = celsius.DefaultIfEmpty(OrdinaryRoomCelsius).Max();
        double low = MeasureWords.InUnit(coldest - 1.5, data.Unit), high = MeasureWords.InUnit(warmest + 1.5, data.Unit);
        Temperature = ChartPanel.Of($"Temperature, {MeasureWords.Symbol(data.Unit)}", 26, 80, low, high);
        Ph = ChartPanel.Of("pH", Temperature.Bottom + PanelGap, 170, 3, 6.5);
        if (data.Course.Count > 0)
            Acidity = ChartPanel.Of("Acid, per cent", Ph.Bottom + PanelGap, 120, 0,
                Math.Max(data.TargetPercentLactic * 1.15, Shown.Max(point => point.AcidityPercentLactic.P90)));
        Height = Bottom + 66;
    }

    public double Width { get; }

    public double Height { get; }

    public double Left => LeftMargin;

    public double Right => Width - RightMargin;

    /// <summary>Where the signs of what was entered stand.</summary>
    public double EntriesY => Bottom + 20;

    public ChartPanel Temperature { get; }

    public ChartPanel Ph { get; }

    /// <summary>Expected acidity; null where nothing is forecast.</summary>
    public ChartPanel? Acidity { get; }

    public IEnumerable<ChartPanel> Panels => Acidity is { } acidity ? [Temperature, Ph, acidity] : [Temperature, Ph];

    /// <summary>Lower edge of the lowest panel.</summary>
    public double Bottom => (Acidity ?? Ph).Bottom;

    /// <summary>Where the present lies; null if outside the picture.</summary>
    public double? NowX => _data.NowDay >= 0 && _data.NowDay <= _data.LastDay ? _days.At(_data.NowDay) : null;

    /// <summary>Where the acid line lies.</summary>
    public double AcidLineY => Ph.Values.At(Kitchen.AcidLines.AcidLine.Ph);

    /// <summary>Where the target lies.</summary>
    public double TargetY(ChartPanel acidity) => acidity.Values.At(_data.TargetPercentLactic);

    /// <summary>Expected temperature in the jar.</summary>
    public string ExpectedTemperature => Line(point => Temperature.Values.At(MeasureWords.InUnit(point.JarCelsius, _data.Unit)));

    public string PhMedian => Line(point => Ph.Values.At(point.Ph.P50));

    public string PhBand => Band(Ph, point => point.Ph);

    public string AcidityMedian(ChartPanel acidity) => Line(point => acidity.Values.At(point.AcidityPercentLactic.P50));

    public string AcidityBand(ChartPanel acidity) => Band(acidity, point => point.AcidityPercentLactic);

    /// <summary>Measured temperature, in pieces where it was not measured for some hours.</summary>
    public IEnumerable<string> MeasuredTemperature
    {
        get
        {
            var piece = new List<(double X, double Y)>();
            double last = double.NegativeInfinity;
            foreach (var point in _data.Measured.Where(point => point.Day <= _data.LastDay))
            {
                if (point.Day - last > _data.LongestGapDays && piece.Count > 0)
                {
                    yield return Svg.Points(piece);
                    piece.Clear();
                }
                last = point.Day;
                piece.Add((_days.At(point.Day), Temperature.Values.At(MeasureWords.InUnit(point.Celsius, _data.Unit))));
            }
            if (piece.Count > 0)
                yield return Svg.Points(piece);
        }
    }

    /// <summary>Measured pH.</summary>
    public IEnumerable<MeasuredPoint> MeasuredPh => _data.Readings
        .Select(reading => (Day: (reading.At - _data.Calendar.Origin).TotalDays, Reading: reading))
        .Where(entry => entry.Day >= 0 && entry.Day <= _data.LastDay)
        .Select(entry => new MeasuredPoint(_days.At(entry.Day), Ph.Values.At(entry.Reading.Ph), entry.Reading.Method));

    /// <summary>Looks, sightings, tastes and changes of stage, each with its sign.</summary>
    public IEnumerable<AxisMark> Entries => _data.Entries
        .Select(entry => (Day: (entry.At - _data.Calendar.Origin).TotalDays, Sign: SignOf(entry)))
        .Where(entry => entry.Sign is not null && entry.Day >= 0 && entry.Day <= _data.LastDay)
        .Select(entry => new AxisMark(_days.At(entry.Day), entry.Sign!));

    /// <summary>Dates along the bottom, as many as there is room for.</summary>
    public IEnumerable<AxisMark> Dates
    {
        get
        {
            int room = (int)((Right - Left) / 58);
            int step = Math.Max(1, (int)Math.Ceiling(_data.LastDay / room));
            for (int day = 0; day <= _data.LastDay && _days.At(day) <= Right - HalfADate; day += step)
                yield return new AxisMark(_days.At(day), _data.Calendar.Date(day).ToString("d MMM", CultureInfo.InvariantCulture));
        }
    }

    private static string? SignOf(Observation entry) => entry switch
    {
        Look => "|",
        Sighting => "!",
        Taste => "T",
        StageChange => ">",
        _ => null,
    };

    private IEnumerable<CoursePoint> Shown => _data.Course.Where(point => point.Day <= _data.LastDay);

    private string Line(Func<CoursePoint, double> y) => Svg.Points(Shown.Select(point => (_days.At(point.Day), y(point))));

    private string Band(ChartPanel panel, Func<CoursePoint, Quantiles> quantity) => Svg.Band(
        [.. Shown.Select(point => (_days.At(point.Day), panel.Values.At(quantity(point).P10), panel.Values.At(quantity(point).P90)))]);
}
