using System.Globalization;
using System.Text.Json;

namespace FermentWatch.Service.Tests.CommandLine;

public class OutlookTests
{
    private static readonly string[] Cabbage = ["outlook", "--produce", "cabbage", "--salt", "2.25%", "--temperature", "18C"];

    [Fact]
    public async Task Outlook_Csv_HasTheContractsColumnsAndARowForZeroEachStepAndTheLastDay()
    {
        Call call = await Call.Of([.. Cabbage, "--days", "2.25", "--every", "0.5", "--csv"]);
        Assert.Equal(0, call.ExitCode);
        Assert.Equal("day,temperature_c,ph_p10,ph_p50,ph_p90,acidity_p10,acidity_p50,acidity_p90,sourness_p50", call.Lines[0]);
        Assert.Equal(["0", "0.5", "1", "1.5", "2", "2.25"], call.Lines.Skip(1).Select(line => line.Split(',')[0]));
        Assert.All(call.Lines, line => Assert.Equal(9, line.Split(',').Length));
        Assert.Equal("Caution: A forecast is not a measurement, and it knows nothing of mould or spoilage.", Assert.Single(call.ErrorLines));
    }

    [Fact]
    public async Task Outlook_DefaultSpan_IsThirtyDaysByDays()
    {
        Call call = await Call.Of([.. Cabbage, "--csv"]);
        Assert.Equal(Enumerable.Range(0, 31).Select(day => day.ToString(CultureInfo.InvariantCulture)), call.Lines.Skip(1)
            .Select(line => line.Split(',')[0]));
    }

    [Fact]
    public async Task Outlook_SameSeed_GivesTheSameBytesAndAnotherSeedDoesNot()
    {
        Call first = await Call.Of([.. Cabbage, "--csv", "--seed", "7"]);
        Call again = await Call.Of([.. Cabbage, "--csv", "--seed", "7"]);
        Call other = await Call.Of([.. Cabbage, "--csv", "--seed", "8"]);
        Assert.Equal(first.Output, again.Output);
        Assert.NotEqual(first.Output, other.Output);
    }

    [Fact]
    public async Task Outlook_FahrenheitPoundsAndMassesOfOneVegetable_GiveTheSameJar()
    {
        Call celsius = await Call.Of("outlook", "--produce", "cabbage=453.59237g", "--salt", "2.25", "--temperature", "20C", "--days", "5", "--csv");
        Call fahrenheit = await Call.Of("outlook", "--produce", "Cabbage=1lb", "--salt", "2.25 %", "--temperature", "68F", "--days", "5d", "--csv");
        Assert.Equal(celsius.Output, fahrenheit.Output);
    }

    [Fact]
    public async Task Outlook_Until_PrintsTheDaysEmptyWhereNotReached()
    {
        Call call = await Call.Of([.. Cabbage, "--days", "10", "--until", "ph=4.6", "--until", "acidity=3.9", "--csv"]);
        Assert.Equal("until,p10,p50,p90", call.Lines[0]);
        string[] reached = call.Lines[1].Split(',');
        Assert.Equal("ph=4.6", reached[0]);
        double[] days = [.. reached.Skip(1).Select(day => double.Parse(day, CultureInfo.InvariantCulture))];
        Assert.True(days[0] > 0.5 && days[0] <= days[1] && days[1] <= days[2] && days[2] < 10, call.Lines[1]);
        Assert.Equal("acidity=3.9,,,", call.Lines[2]);
    }

    [Fact]
    public async Task Outlook_Ready_SaysByWhenToPack()
    {
        Call call = await Call.Of([.. Cabbage, "--days", "60", "--target", "sour", "--ready", "2026-12-24", "--json"]);
        JsonElement answer = JsonDocument.Parse(call.Output).RootElement;
        DateOnly Packed(string name) => DateOnly.Parse(answer.GetProperty("ready").GetProperty(name).GetString()!, CultureInfo.InvariantCulture);
        int Days(string name) => (int)Math.Ceiling(answer.GetProperty("target").GetProperty(name).GetDouble());
        Assert.Equal(new DateOnly(2026, 12, 24), Packed("date"));
        Assert.Equal(new DateOnly(2026, 12, 24).AddDays(-Days("p90")), Packed("pack_by_nine_of_ten"));
        Assert.Equal(new DateOnly(2026, 12, 24).AddDays(-Days("p50")), Packed("pack_by_half"));
        Call table = await Call.Of([.. Cabbage, "--days", "60", "--target", "sour", "--ready", "2026-12-24"]);
        Assert.Contains($"To be ready on 2026-12-24: pack by {answer.GetProperty("ready").GetProperty("pack_by_nine_of_ten")} for nine of ten",
            table.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Outlook_PlannedMoveIntoTheCold_ReachesSournessLater()
    {
        double stays = await DayOf("--until", "acidity=0.6");
        double moved = await DayOf("--until", "acidity=0.6", "--move", "1.5=7C", "--move", "20=18C");
        Assert.True(moved > stays + 1, $"{stays} staying, {moved} moved");
    }

    [Fact]
    public async Task Outlook_MeterReading_NarrowsTheSpread()
    {
        Call without = await Call.Of([.. Cabbage, "--days", "3", "--csv"]);
        Call with = await Call.Of([.. Cabbage, "--days", "3", "--csv", "--reading", "3=4.3:meter", "--reading", "2=5.0:strip"]);
        Assert.True(PhWidth(with) < 0.5 * PhWidth(without), $"{PhWidth(without)} without, {PhWidth(with)} with");
    }

    [Theory]
    [InlineData("--produce", "carrot=200g")]
    [InlineData("--water", "500g")]
    [InlineData("--starter", "100g=0.9%")]
    [InlineData("--vinegar", "60g=5%")]
    [InlineData("--vessel", "5gal")]
    [InlineData("--cut", "whole")]
    [InlineData("--salt-by-taste", "")]
    public async Task Outlook_EverythingThatWentIn_ChangesTheForecast(string option, string value)
    {
        string[] jar = ["outlook", "--produce", "cabbage=2kg", "--temperature", "30C", "--move", "1=12C", "--days", "6", "--csv"];
        string[] changed = option == "--salt-by-taste" ? [.. jar, "--salt", "by taste"] : [.. jar, "--salt", "2.25%", option, value];
        Call plain = await Call.Of([.. jar, "--salt", "2.25%"]);
        Call other = await Call.Of(changed);
        Assert.Equal((0, 0), (plain.ExitCode, other.ExitCode));
        Assert.NotEqual(plain.Output, other.Output);
    }

    [Fact]
    public async Task Outlook_Json_HoldsCourseDaysAndCaution()
    {
        Call call = await Call.Of([.. Cabbage, "--days", "10", "--json", "--until", "ph=4.0", "--target", "sour"]);
        JsonElement json = JsonDocument.Parse(call.Output).RootElement;
        Assert.Equal(["model_version", "caution", "acid_line_days", "acid_line_centre_days", "ph_4_days", "until", "target", "ready", "remarks",
            "flagged", "course"],
            json.EnumerateObject().Select(property => property.Name));
        Assert.Equal(11, json.GetProperty("course").GetArrayLength());
        Assert.Equal("ph=4.0", json.GetProperty("until")[0].GetProperty("level").GetString());
        Assert.Equal(json.GetProperty("ph_4_days").GetProperty("p10").GetDouble(), json.GetProperty("until")[0].GetProperty("p10").GetDouble());
        Assert.Equal("sour", json.GetProperty("target").GetProperty("level").GetString());
        Assert.Equal("A forecast is not a measurement, and it knows nothing of mould or spoilage.", json.GetProperty("caution").GetString());
    }

    [Fact]
    public async Task Outlook_Table_ClosesWithTheCautionsAndCallsNothingSafe()
    {
        Call call = await Call.Of([.. Cabbage, "--days", "8", "--until", "acidity=3.9"]);
        Assert.Equal("", call.Error);
        Assert.Contains("Expected, acidity=3.9: in fewer than nine of ten within 8 days, in fewer than half within 8 days, hardly at all within 8 "
            + "days.", call.Lines);
        Assert.Equal("Caution: A forecast is not a measurement, and it knows nothing of mould or spoilage.", call.Lines[^2]);
        Assert.Equal("Caution: Your local food-safety guidance comes first. When in doubt, throw it out.", call.Lines[^1]);
        Assert.DoesNotContain(" safe", call.Output, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Outlook_OnATerminal_DrawsBothCharts()
    {
        Call call = await Call.OnTerminal([.. Cabbage, "--days", "10"]);
        Assert.StartsWith("pH (o half of the jars, . eight of ten, - acid line)", call.Lines[0], StringComparison.Ordinal);
        string[] rows = call.Lines[1..10];
        Assert.All(rows, row => Assert.Equal('|', row[7]));
        // Each column holds one median, on its way down from left to right.
        int[] medians = [.. Enumerable.Range(8, 72).Select(column => Array.FindIndex(rows, row => row.Length > column && row[column] == 'o'))];
        Assert.All(medians, row => Assert.InRange(row, 0, 8));
        Assert.Equal(medians.Order(), medians);
        Assert.Contains(rows, row => row.Contains("---", StringComparison.Ordinal));
        Assert.Contains("acid, % lactic (o half of the jars, . eight of ten)", call.Lines);
    }

    private static async Task<double> DayOf(params string[] more)
    {
        Call call = await Call.Of([.. Cabbage, "--days", "60", "--csv", .. more]);
        return double.Parse(call.Lines[1].Split(',')[2], CultureInfo.InvariantCulture);
    }

    private static double PhWidth(Call call)
    {
        string[] last = call.Lines[^1].Split(',');
        return double.Parse(last[4], CultureInfo.InvariantCulture) - double.Parse(last[2], CultureInfo.InvariantCulture);
    }
}
