using System.Globalization;
using FermentWatch.Kinetics.Observation;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kinetics.Forecasting;

internal static class RequestRules
{
    private const double MostDays = 366;

    public static IReadOnlyList<Refusal> Check(ForecastRequest request)
    {
        var refusals = new List<Refusal>(request.Recipe.Check());
        Within(refusals, "days", request.Days, TemperatureCourse.StepDays, MostDays, "days");
        Within(refusals, "step", request.EveryDays, TemperatureCourse.StepDays, MostDays, "days");
        Within(refusals, "members", request.Members, 16, 65536, "members");
        if (request.Target?.Check() is { } refusal)
            refusals.Add(refusal);
        foreach (PhReading reading in request.Readings)
            CheckReading(reading, refusals);
        foreach (AcidityReading titration in request.Titrations)
        {
            Within(refusals, "day of the titration", titration.Day, 0, MostDays, "days");
            Within(refusals, "titration", titration.PercentLactic, 0, 5, "% lactic");
        }
        foreach (double day in request.Tastes.Select(taste => taste.Day).Concat(request.Gas.Select(gas => gas.Day)))
            Within(refusals, "day of the observation", day, 0, MostDays, "days");
        if (request.Tastes.Count > 0 && request.Target is null or { Kind: TargetKind.Ph })
            refusals.Add(new("tastes", "no sourness or acidity target",
                "a sourness or acidity target that the tastes are measured on would be right"));
        return refusals;
    }

    private static void CheckReading(PhReading reading, List<Refusal> refusals)
    {
        Within(refusals, "day of the pH reading", reading.Day, 0, MostDays, "days");
        Within(refusals, "pH reading", reading.Ph, 2, 8, "on the pH scale");
        if (!Enum.IsDefined(reading.Method))
            refusals.Add(new("method of the pH reading", $"{(int)reading.Method}", "meter, probe or strip would be right"));
    }

    private static void Within(List<Refusal> refusals, string field, double value, double low, double high, string unit)
    {
        if (!(value >= low && value <= high))
            refusals.Add(new(field, string.Create(CultureInfo.InvariantCulture, $"{value}"),
                string.Create(CultureInfo.InvariantCulture, $"{low:0.##} to {high:0.##} {unit} would be right")));
    }
}
