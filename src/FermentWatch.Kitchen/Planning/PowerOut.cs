using FermentWatch.Kinetics.Forecasting;
using FermentWatch.Kinetics.Temperature;

namespace FermentWatch.Kitchen.Planning;

/// <summary>What becomes of a jar that went into the store when it was sour, if the power fails there a month later.</summary>
/// <param name="Days">How long it fails.</param>
/// <param name="Celsius">What the store comes to: the room's temperature, from the first hour on, which is the worst of it.</param>
/// <param name="Before">Acidity when it fails, per cent lactic.</param>
/// <param name="After">When it is cold again.</param>
/// <param name="OtherwiseMiddle">Where it had not failed, the middle.</param>
public sealed record PowerOut(int Days, double Celsius, Quantiles Before, Quantiles After, double OtherwiseMiddle)
{
    private const int DaysInTheCold = 30;

    /// <summary>Works it out by two forecasts; null where the jar is never sour.</summary>
    public static PowerOut? Of(PlanQuestion question, ReadyDayForecasts forecasts)
    {
        var room = new RoomAhead(question.Room.MeanCelsius, question.Room.SpreadCelsius);
        if (question.PowerOutDays == 0 || forecasts.Of(room) is not { } ready)
            return null;
        int fails = (int)Math.Ceiling(ready.Middle) + DaysInTheCold, back = fails + question.PowerOutDays;
        Forecast failing = forecasts.Forecast(Course(question, (int)Math.Ceiling(ready.Middle), fails, back), back, 1);
        Forecast otherwise = forecasts.Forecast(Course(question, (int)Math.Ceiling(ready.Middle), back, back), back, 1);
        return new PowerOut(question.PowerOutDays, question.Room.MeanCelsius, At(failing, fails).AcidityPercentLactic,
            At(failing, back).AcidityPercentLactic, At(otherwise, back).AcidityPercentLactic.P50);
    }

    private static CoursePoint At(Forecast forecast, int day) => forecast.Course.Last(point => point.Day <= day);

    private static TemperatureCourse Course(PlanQuestion question, int chilled, int fails, int back) =>
        TemperatureCourse.FromSteps([.. Enumerable.Range(0, back * TemperatureCourse.StepsPerDay).Select(step => step / TemperatureCourse.StepsPerDay)
            .Select(day => day < chilled || day >= fails ? question.Room : question.StoreRoom)
            .Select(room => new TemperatureStep(room.MeanCelsius, room.SpreadCelsius, InsideJar: false))], question.Room);
}
