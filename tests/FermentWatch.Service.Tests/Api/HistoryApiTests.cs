using System.Net;
using System.Net.Http.Headers;
using System.Text.Json;
using FermentWatch.Kitchen.Sensors;
using FermentWatch.RunningTests;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Service.Tests.Api;

public sealed class HistoryApiTests : IAsyncLifetime
{
    private RunningKitchen _kitchen = null!;
    private Script _script = null!;
    private Sensor _shelf = null!;
    private Sensor _cellar = null!;

    /// <summary>A counter at 20 to 21 degrees for ten days, a cellar at 10 to 11, a jar that went from one to the other.</summary>
    public async Task InitializeAsync()
    {
        _kitchen = await RunningKitchen.StartAsync();
        _script = await Script.SignedInAsync(_kitchen);
        await _script.PutUpAsync(("packed_at", Date(-9)));
        _shelf = await _kitchen.AddSensorAsync("shelf", await PlaceAsync("kitchen counter"), 10, day => 20 + (day % 1));
        _cellar = await _kitchen.AddSensorAsync("cellar", await PlaceAsync("cellar"), 10, day => 10 + (day % 1));
    }

    public async Task DisposeAsync()
    {
        _script.Dispose();
        await _kitchen.DisposeAsync();
    }

    [Theory]
    [InlineData("place=cellar", 10.0)]
    [InlineData("place=Kitchen%20Counter", 20.0)]
    [InlineData("sensor=shelf", 20.0)]
    [InlineData("jar=1", 20.0)]
    public async Task History_ByPlaceSensorOrJar_HoldsOnlyWhatWasMeasuredThere(string whose, double low)
    {
        JsonElement history = await _script.GetAsync($"/api/v1/history?{whose}&points=50");
        double[] means = Numbers(history, "mean_in_unit_of_quantity");

        Assert.InRange(means.Length, 25, 50);
        Assert.All(means, mean => Assert.InRange(mean, low, low + 1));
        Assert.All(means.Zip(Numbers(history, "minimum_in_unit_of_quantity"), Numbers(history, "maximum_in_unit_of_quantity")),
            each => Assert.True(each.Second <= each.First && each.First <= each.Third));
        Assert.Equal("Cel", history.GetProperty("unit").GetString());
        Assert.True(history.GetProperty("point_seconds").GetInt64() >= 3600);
    }

    [Fact]
    public async Task History_OfAJarThatMoved_FollowsItFromPlaceToPlace()
    {
        (await _script.PostAsync("/api/v1/jars/1/place", new { place = "cellar", at = Date(-4) })).EnsureSuccessStatusCode();
        JsonElement history = await _script.GetAsync("/api/v1/history?jar=1&points=60");
        Instant moved = _kitchen.Now - Duration.FromDays(4);
        var points = history.GetProperty("at").EnumerateArray().Zip(Numbers(history, "mean_in_unit_of_quantity"),
            (at, mean) => (At: InstantPattern.ExtendedIso.Parse(at.GetString()!).Value, Mean: mean)).ToList();

        Assert.All(points.Where(point => point.At < moved - Duration.FromDays(1)), point => Assert.InRange(point.Mean, 20, 21));
        Assert.All(points.Where(point => point.At > moved + Duration.FromDays(1)), point => Assert.InRange(point.Mean, 10, 11));
        Assert.True(points.Count > 30, $"{points.Count} points");
    }

    [Fact]
    public async Task History_OfADayWithFewReadings_IsOneByOne()
    {
        string day = Date(-3);
        JsonElement history = await _script.GetAsync($"/api/v1/history?sensor=shelf&from={day}&to={day}");

        Assert.Equal(JsonValueKind.Null, history.GetProperty("point_seconds").ValueKind);
        Assert.Equal(96, history.GetProperty("at").GetArrayLength());
        Assert.All(["minimum_in_unit_of_quantity", "maximum_in_unit_of_quantity", "readings"], column =>
            Assert.Equal(JsonValueKind.Null, history.GetProperty(column).ValueKind));
    }

    [Theory]
    [InlineData("", "text/csv")]
    [InlineData("&format=csv", "application/json")]
    public async Task History_AskedForCsv_IsALineForEachPoint(string format, string accept)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, $"/api/v1/history?place=cellar&points=50{format}");
        request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue(accept));
        HttpResponseMessage answer = await _script.Http.SendAsync(request);
        string[] lines = (await answer.Content.ReadAsStringAsync()).TrimEnd('\n').Split('\n');

        Assert.Equal("text/csv", answer.Content.Headers.ContentType!.MediaType);
        Assert.Equal("at,mean_in_unit_of_quantity,minimum_in_unit_of_quantity,maximum_in_unit_of_quantity,readings,quantity,unit", lines[0]);
        JsonElement same = await _script.GetAsync("/api/v1/history?place=cellar&points=50");
        Assert.Equal(same.GetProperty("at").GetArrayLength(), lines.Length - 1);
        Assert.StartsWith($"{same.GetProperty("at")[0].GetString()},", lines[1], StringComparison.Ordinal);
        Assert.EndsWith(",temperature,Cel", lines[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "place: Choose one of place (its name), sensor (its name in topics) or jar (its number).")]
    [InlineData("?place=cellar&jar=1", "place: more than one of place, sensor and jar cannot be used. Choose one of place (its name), sensor (its "
        + "name in topics) or jar (its number).")]
    [InlineData("?place=attic", "place: attic cannot be used. Choose one of ")]
    [InlineData("?sensor=attic", "sensor: attic cannot be used. Choose one of cellar, shelf.")]
    [InlineData("?jar=77", "jar: 77 cannot be used. Enter the number of a jar that was put up.")]
    [InlineData("?jar=1&quantity=light", "quantity: light cannot be used. Enter temperature, ph, millivolts or humidity.")]
    [InlineData("?jar=1&from=yesterday",
        "from: yesterday cannot be used. Enter a date or an instant in ISO 8601, such as 2026-10-04 or 2026-10-04T08:00:00Z.")]
    [InlineData("?jar=1&from=2026-10-04&to=2026-10-01", "from: 2026-10-04 cannot be used. Enter a date or an instant before ")]
    [InlineData("?jar=1&points=1", "points: 1 cannot be used. Enter a whole number from 2 to 5000.")]
    [InlineData("?jar=1&format=xml", "format: xml cannot be used. Enter json or csv.")]
    public async Task History_AskedWrongly_SaysWhatWouldBeRight(string query, string words)
    {
        HttpResponseMessage answer = await _script.Http.GetAsync($"/api/v1/history{query}");
        JsonElement problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement;

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        Assert.StartsWith(words, Assert.Single(Assert.Single(problem.GetProperty("errors").EnumerateObject()).Value.EnumerateArray()).GetString(),
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("from=0001-01-01&to=9998-12-31")]
    [InlineData("from=9998-12-31T23:59:59%2B18:00&to=9998-12-31")]
    [InlineData("from=1969-12-31T23:59:59.999Z&to=1970-01-01T00:00:00.001Z&points=2")]
    public async Task History_OfTheEndsOfTheCalendar_IsAnswered(string span)
    {
        HttpResponseMessage answer = await _script.Http.GetAsync($"/api/v1/history?sensor=shelf&{span}");
        Assert.True(answer.StatusCode is HttpStatusCode.OK or HttpStatusCode.UnprocessableEntity, await answer.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task History_AskedByAStranger_IsRefused()
    {
        using Script stranger = Script.Stranger(_kitchen);
        Assert.Equal(HttpStatusCode.Unauthorized, (await stranger.Http.GetAsync("/api/v1/history?jar=1")).StatusCode);
    }

    private static double[] Numbers(JsonElement history, string column) =>
        [.. history.GetProperty(column).EnumerateArray().Select(each => each.GetDouble())];

    private string Date(int days) => LocalDatePattern.Iso.Format((_kitchen.Now + Duration.FromDays(days)).InUtc().Date);

    private async Task<Guid> PlaceAsync(string name) =>
        (await _kitchen.Services.GetRequiredService<FermentWatch.Acts.Households.ReadyPlaces>().MakeAsync(default))
        .First(place => place.Name == name).Id;
}
