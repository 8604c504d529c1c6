using System.Globalization;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Observations;
using FermentWatch.Kitchen.Words;
using NodaTime;

namespace FermentWatch.Web.Pages.Charts;

/// <summary>Where everything lies in the picture of a jar's course: temperature, pH and acidity over one time axis.</summary>
public sealed class CoursePlot
{
    private const double LeftMargin = 38, RightMargin = 14, PanelGap = 40, HalfADate = 10;
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
        double[] celsius = [.. data.Measured.Select(point => point.Celsius).Concat(Ahead.Select(point => point.JarCelsius))];
        double bottom = 26 - PanelGap;
        if (data.Readings.Count > 0 || data.Course.Count > 0)
            bottom = (Ph = ChartPanel.Of("pH", bottom + PanelGap, 170, 3, 6.5)).Bottom;
        if (celsius.Length > 0)
            bottom = (Temperature = Heat(celsius, bottom + PanelGap)).Bottom;
        if (data.Course.Count > 0)
            bottom = (Acidity = ChartPanel.Of("Acid, per cent", bottom + PanelGap, 110, 0,
                Math.Max(data.TargetPercentLactic * 1.15, Shown.Max(point => point.AcidityPercentLactic.P90)))).Bottom;
        Bottom = bottom;
        Height = Bottom + 66;
    }

    public double Width { get; }

    public double Height { get; }

    public double Left => LeftMargin;

    public double Right => Width - RightMargin;

    /// <summary>Where the signs of what was entered stand.</summary>
    public double EntriesY => Bottom + 20;

    /// <summary>Null where nothing was measured or is expected.</summary>
    public ChartPanel? Temperature { get; }

    /// <summary>Null where nothing was measured or is expected.</summary>
    public ChartPanel? Ph { get; }

    /// <summary>Expected acidity; null where nothing is forecast.</summary>
    public ChartPanel? Acidity { get; }

    public IEnumerable<ChartPanel> Panels => new[] { Ph, Temperature, Acidity }.OfType<ChartPanel>();

    /// <summary>Lower edge of the lowest panel.</summary>
    public double Bottom { get; }

    /// <summary>Where the present lies; null if outside the picture.</summary>
    public double? NowX => _data.NowDay >= 0 && _data.NowDay <= _data.LastDay ? _days.At(_data.NowDay) : null;

    /// <summary>Where the acid line lies.</summary>
    public double AcidLineY(ChartPanel ph) => ph.Values.At(Kitchen.AcidLines.AcidLine.Ph);

    /// <summary>Where the target lies.</summary>
    public double TargetY(ChartPanel acidity) => acidity.Values.At(_data.TargetPercentLactic);

    /// <summary>Where it is slow below and soft above, with their names; none where they lie beyond the panel.</summary>
    public IEnumerable<AxisMark> HeatLimits(ChartPanel temperature) =>
        new[] { (Celsius: 16.0, Name: "slow below"), (Celsius: 24, Name: "soft above") }
        .Select(limit => (Value: MeasureWords.InUnit(limit.Celsius, _data.Unit), limit.Name))
        .Where(limit => limit.Value > temperature.Values.From && limit.Value < temperature.Values.To)
        .Select(limit => new AxisMark(temperature.Values.At(limit.Value), limit.Name));

    /// <summary>When it is sour enough, from and until; null where not forecast or beyond the picture.</summary>
    public (double From, double Until)? Window => _data.Window is { } window && window.From < _data.LastDay
        ? (_days.At(window.From), _days.At(Math.Min(window.Until, _data.LastDay))) : null;

    /// <summary>Expected temperature in the jar from now on, from the coldest to the warmest of a day: by half days it is a saw.</summary>
    public string ExpectedTemperature(ChartPanel temperature)
    {
        CoursePoint[] ahead = [.. Ahead];
        double Y(double celsius) => temperature.Values.At(MeasureWords.InUnit(celsius, _data.Unit));
        IEnumerable<double> Near(int i) => ahead[Math.Max(0, i - 1)..Math.Min(ahead.Length, i + 2)].Select(point => point.JarCelsius);
        return Svg.Band([.. ahead.Select((point, i) => (_days.At(point.Day), Y(Near(i).Min()), Y(Near(i).Max())))]);
    }

    public string PhMedian(ChartPanel ph) => Line(point => ph.Values.At(point.Ph.P50));

    public string PhBand(ChartPanel ph) => Band(ph, point => point.Ph);

    public string AcidityMedian(ChartPanel acidity) => Line(point => acidity.Values.At(point.AcidityPercentLactic.P50));

    public string AcidityBand(ChartPanel acidity) => Band(acidity, point => point.AcidityPercentLactic);

    /// <summary>Measured temperature, in pieces where it was not measured for some hours.</summary>
    public IEnumerable<string> MeasuredTemperature(ChartPanel temperature)
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
            piece.Add((_days.At(point.Day), temperature.Values.At(MeasureWords.InUnit(point.Celsius, _data.Unit))));
        }
        if (piece.Count > 0)
            yield return Svg.Points(piece);
    }

    /// <summary>Measured pH.</summary>
    public IEnumerable<MeasuredPoint> MeasuredPh(ChartPanel ph) => _data.Readings
        .Select(reading => (Day: (reading.At - _data.Calendar.Origin).TotalDays, Reading: reading))
        .Where(entry => entry.Day >= 0 && entry.Day <= _data.LastDay)
        .Select(entry => new MeasuredPoint(_days.At(entry.Day), ph.Values.At(entry.Reading.Ph), entry.Reading.Method));

    /// <summary>Looks, sightings, tastes, titrations and changes of stage, each with its sign.</summary>
    public IEnumerable<AxisMark> Entries => _data.Entries
        .Select(entry => (Day: (entry.At - _data.Calendar.Origin).TotalDays, Sign: SignOf(entry)))
        .Where(entry => entry.Sign is not null && entry.Day >= 0 && entry.Day <= _data.LastDay)
        .Select(entry => new AxisMark(_days.At(entry.Day), entry.Sign!));

    /// <summary>Dates along the bottom, as many as there is room for.</summary>
    public IEnumerable<AxisMark> Dates
    {
        get
        {
            int year = _data.Calendar.Today.Year;
            int room = (int)((Right - Left) / (_data.Calendar.Date(0).Year == year ? 58 : 84));
            int step = Math.Max(1, (int)Math.Ceiling(_data.LastDay / room));
            for (int day = 0; day <= _data.LastDay && _days.At(day) <= Right - HalfADate; day += step)
                {
                LocalDate date = _data.Calendar.Date(day);
                yield return new AxisMark(_days.At(day), date.ToString(date.Year == year ? "d MMM" : "d MMM uuuu", CultureInfo.InvariantCulture));
            }
        }
    }

    private static string? SignOf(Observation entry) => entry switch
    {
        Look => "|",
        Sighting => "!",
        Taste => "T",
        Titration => "%",
        StageChange => ">",
        _ => null,
    };

    private ChartPanel Heat(double[] celsius, double top)
    {
        double low = MeasureWords.InUnit(celsius.Min() - 1.5, _data.Unit), high = MeasureWords.InUnit(celsius.Max() + 1.5, _data.Unit);
        return ChartPanel.Of($"Temperature, {MeasureWords.Symbol(_data.Unit)}", top, 120, low, high);
    }

    /// <summary>What is expected from now on; all of it where nothing was measured.</summary>
    private IEnumerable<CoursePoint> Ahead => Shown.Where(point => _data.Measured.Count == 0 || point.Day >= _data.NowDay - 0.5);

    private IEnumerable<CoursePoint> Shown => _data.Course.Where(point => point.Day <= _data.LastDay);

    private string Line(Func<CoursePoint, double> y) => Svg.Points(Shown.Select(point => (_days.At(point.Day), y(point))));

    private string Band(ChartPanel panel, Func<CoursePoint, Quantiles> quantity) => Svg.Band(
        [.. Shown.Select(point => (_days.At(point.Day), panel.Values.At(quantity(point).P10), panel.Values.At(quantity(point).P90)))]);
}
