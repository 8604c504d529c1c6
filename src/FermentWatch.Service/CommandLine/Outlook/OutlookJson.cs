using System.Text.Json;
using System.Text.Json.Nodes;
using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kitchen.Guides;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Service.CommandLine.Outlook;

/// <summary>The answer as JSON, with the names of the comma separated columns.</summary>
internal static class OutlookJson
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true };

    public static string Text(OutlookAnswer answer)
    {
        Forecast forecast = answer.Forecast;
        var json = new JsonObject
        {
            ["model_version"] = forecast.ModelVersion,
            ["caution"] = Cautions.ForecastIsNoMeasurement.Text,
            ["acid_line_days"] = Days(forecast.AcidLine),
            ["acid_line_centre_days"] = Days(forecast.CentreAcidLine),
            ["ph_4_days"] = Days(forecast.Ph4),
            ["until"] = new JsonArray([.. answer.Until.Select(until => Named(until.Name, until.Days))]),
            ["target"] = answer.Target is { } target ? Named(target.Name, target.Days) : null,
            ["ready"] = answer.Ready is { } ready
                ? new JsonObject { ["date"] = Date(ready.Date), ["pack_by_nine_of_ten"] = Date(ready.NineOfTen),
                ["pack_by_half"] = Date(ready.Half) } : null,
            ["remarks"] = new JsonArray([.. forecast.Remarks.Select(remark => JsonValue.Create(remark))]),
            ["flagged"] = new JsonArray([.. forecast.Flagged.Select(Flagged)]),
            ["course"] = new JsonArray([.. forecast.Course.Select(Course)]),
        };
        return json.ToJsonString(Indented);
    }

    private static string? Date(LocalDate? date) => date is { } known ? LocalDatePattern.Iso.Format(known) : null;

    private static JsonObject Days(PassageDays days) => new()
    {
        ["p10"] = Rounded(days.P10), ["p50"] = Rounded(days.P50), ["p90"] = Rounded(days.P90),
    };

    private static JsonObject Named(string name, PassageDays days)
    {
        JsonObject named = Days(days);
        named.Insert(0, "level", name);
        return named;
    }

    private static JsonObject Flagged(FlaggedReading flagged) => new()
    {
        ["day"] = Rounded(flagged.Reading.Day), ["ph"] = flagged.Reading.Ph, ["reason"] = flagged.Reason,
            ["worse_than_expected"] = flagged.WorseThanExpected,
    };

    private static JsonObject Course(CoursePoint point) => new()
    {
        ["day"] = Rounded(point.Day), ["temperature_c"] = Rounded(point.JarCelsius),
        ["ph_p10"] = Rounded(point.Ph.P10), ["ph_p50"] = Rounded(point.Ph.P50), ["ph_p90"] = Rounded(point.Ph.P90),
        ["acidity_p10"] = Rounded(point.AcidityPercentLactic.P10), ["acidity_p50"] = Rounded(point.AcidityPercentLactic.P50),
        ["acidity_p90"] = Rounded(point.AcidityPercentLactic.P90), ["sourness_p50"] = Rounded(point.SournessP50),
    };

    private static double? Rounded(double? value) => value is { } known ? Math.Round(known, 4) : null;
}
