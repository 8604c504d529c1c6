using System.Text.Json;
using NodaTime;

namespace FermentWatch.Export.Tests.Dashboards;

/// <summary>Every query of the boards over the series, asked of Debian's influxdb.</summary>
public sealed class SeriesBoardTests(FilledInflux influx) : IClassFixture<FilledInflux>
{
    private const string Series = "fermentwatch-series";

    public static TheoryData<string, string, string> Queries
    {
        get
        {
            var all = new TheoryData<string, string, string>();
            foreach (BoardQuery query in Board.All.SelectMany(board => board.Queries).Where(query => query.Source == Series))
                all.Add(query.Board, query.Panel, query.RefId);
            return all;
        }
    }

    [Theory]
    [MemberData(nameof(Queries))]
    public async Task Query_OfAPanel_GivesRows(string board, string panel, string refId) => Assert.NotEmpty(await RowsAsync(board, panel, refId));

    [Fact]
    public async Task Kitchen_SaysWhatWasMeasured()
    {
        Assert.Equal([("cellar", 12.25), ("kitchen counter", 21.5)],
            (await RowsAsync("kitchen", "Temperature now")).Select(row => (row.Tag("place"), row[1])));
        Assert.Equal([("cellar", 61)], (await RowsAsync("kitchen", "Humidity now")).Select(row => (row.Tag("place"), row[1])));
        List<Row> days = await RowsAsync("kitchen", "Coldest and warmest of a day");
        Assert.Equal((15.25, 26.5), (OfCounter(days).Min(row => row[1]), OfCounter(days).Max(row => row[2])));
        List<Row> weeks = await RowsAsync("kitchen", "Temperature");
        Assert.Equal((48 * 4) + 1 - 7, OfCounter(weeks).Count());
        Assert.Equal([26.5], OfCounter(weeks).Where(row => row.At == Ago(30)).Select(row => row[1]));
        Assert.Equal(49, (await RowsAsync("kitchen", "Humidity")).Count);

        static IEnumerable<Row> OfCounter(IEnumerable<Row> rows) => rows.Where(row => row.Tag("place") == "kitchen counter");
    }

    [Fact]
    public async Task Jar_SaysWhatWasExpectedAndWhatPeopleFound()
    {
        Assert.Equal(
            [(Ago(72), 4.625, 4.75, 4.875), (Ago(48), 4.375, 4.5, 4.625), (Ago(24), 4.125, 4.25, 4.375), (Ago(0), 3.9375, 4.0625, 4.1875)],
            (await RowsAsync("jar", "pH, expected and measured")).Select(row => (row.At, row[1], row[2], row[3])));
        Assert.Equal([(Ago(24), 4.125)], await PointsAsync("pH, expected and measured", "B"));
        Assert.All(await PointsAsync("Acidity, as per cent lactic acid"), point => Assert.Equal(0.75, point.Value));
        Assert.Equal([(Ago(23), 0.875)], await PointsAsync("Acidity, as per cent lactic acid", "B"));
        Assert.All(await PointsAsync("Sourness"), point => Assert.Equal(61.5, point.Value));
        Assert.Equal([3.5, 2.5, 1.5, -0.5], (await PointsAsync("Days to the target")).Select(point => point.Value));
        Assert.Equal([(Ago(30), 0), (Ago(20), 1)], await PointsAsync("Looks"));
        Assert.Equal([(Ago(10), 2)], await PointsAsync("Tastes"));

        async Task<IEnumerable<(Instant At, double Value)>> PointsAsync(string panel, string refId = "A") =>
            (await RowsAsync("jar", panel, refId)).Select(row => (row.At, row[1]));
    }

    [Fact]
    public async Task Sensors_SaysWhoWasHeardWhenAndHowOften()
    {
        Assert.Equal(
            [("cellar", "humidity", Ago(0), 61), ("cellar", "temperature", Ago(0), 12.25), ("counter", "temperature", Ago(0), 21.5)],
            (await RowsAsync("sensors", "Last heard")).Select(row => (row.Tag("sensor"), row.Tag("quantity"), row.At, row[1])));
        IEnumerable<Row> silences = (await RowsAsync("sensors", "Longest silence")).Where(row => row.Tag("sensor") == "counter");
        Row longest = silences.MaxBy(row => row[1])!;
        // It ends with the first reading after it, four hours ago.
        Assert.Equal((Ago(4), 7200), (longest.At, longest[1]));
        IEnumerable<Row> hours = (await RowsAsync("sensors", "Readings an hour")).Where(row => row.Tag("sensor") == "counter");
        Assert.Equal([4, 4, 1, 0, 4, 4], hours.Where(row => row.At >= Ago(8) && row.At < Ago(2)).Select(row => row[1]));
    }

    private Instant Ago(int hours) => influx.Now - Duration.FromHours(hours);

    private async Task<List<Row>> RowsAsync(string name, string panel, string refId = "A")
    {
        Board board = Board.All.Single(board => board.Name == name);
        IReadOnlyList<JsonElement> series = await influx.AskAsync(board, board.Queries.Single(query => query.Panel == panel && query.RefId == refId));
        return [.. series.SelectMany(each => each.GetProperty("values").EnumerateArray().Select(values => new Row(each, values)))];
    }

    /// <summary>A row of a series; column 0 is its time.</summary>
    private sealed class Row(JsonElement series, JsonElement values)
    {
        public Instant At => Instant.FromUnixTimeMilliseconds(values[0].GetInt64());

        public double this[int column] => values[column].GetDouble();

        public string Tag(string name) => series.GetProperty("tags").GetProperty(name).GetString()!;
    }
}
