using FermentWatch.Acts.Histories;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Readings;
using FermentWatch.Web.Pages.Charts;
using NodaTime;

namespace FermentWatch.Service.Tests.Pages;

public class SpanPlotTests
{
    private static readonly Instant From = Instant.FromUtc(2025, 12, 20, 0, 0);

    [Fact]
    public void Lines_NothingMeasuredForADay_AreParted()
    {
        SpanPlot plot = Plot(30, [.. Enumerable.Range(0, 48).Where(hour => hour is < 10 or > 33).Select(hour => Point(hour, 18))]);
        Assert.Equal([10, 14], plot.Lines.Select(line => line.Split(' ').Length));
        Assert.Equal([20, 28], plot.Bands.Select(band => band.Split(' ').Length));
    }

    [Fact]
    public void Dates_OverTheTurnOfTheYear_BearTheirYear()
    {
        string[] dates = [.. Plot(30, [Point(0, 18), Point(700, 18)]).Dates.Select(date => date.Label)];
        Assert.InRange(dates.Length, 2, 9);
        Assert.StartsWith("21 Dec 2025", dates[0], StringComparison.Ordinal);
        Assert.Contains(dates, date => date.EndsWith("Jan 2026", StringComparison.Ordinal));
    }

    [Fact]
    public void Panel_InFahrenheit_IsNamedAndMeasuredInIt()
    {
        SpanPlot plot = Plot(30, [Point(0, 20), Point(1, 22)], TemperatureUnit.Fahrenheit);
        Assert.Equal("°F", plot.Panel.Title);
        Assert.InRange(plot.Panel.Values.From, 65, 68);
    }

    private static SpanPlot Plot(int days, ReadingMean[] points, TemperatureUnit unit = TemperatureUnit.Celsius) => new(
        new HistoryAnswer("cellar", new HistorySpan(MeasuredQuantity.Ordinary.Key, From, From + Duration.FromDays(days), 700),
        new MeasuredHistory(Duration.FromHours(1), points), []),
        new Household { Id = Guid.Empty, Name = "Number Nine", TimeZoneId = "Etc/UTC", TemperatureUnit = unit }, 760);

    private static ReadingMean Point(int hour, double value) => new(From + Duration.FromHours(hour), value, value - 1, value + 1, 60);
}
