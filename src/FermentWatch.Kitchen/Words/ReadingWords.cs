using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Readings;

namespace FermentWatch.Kitchen.Words;

/// <summary>Readings, their verdicts and what could not be used, in words.</summary>
public static class ReadingWords
{
    /// <summary>A value with its unit, in the household's own.</summary>
    public static string Value(Quantity quantity, double value, TemperatureUnit unit) =>
        MeasuredQuantity.Of(quantity).Say is { } say ? say(value) : MeasureWords.Temperature(value, unit);

    /// <summary>What a verdict means.</summary>
    public static string Of(Verdict verdict) => verdict switch
    {
        Verdict.Pending => "not judged yet",
        Verdict.Counts => "count",
        Verdict.Sentinel => "left out: the sensor says that it has no value (85 °C at power-up, -127 °C unplugged)",
        Verdict.OutOfRange => "left out: outside what can be",
        Verdict.Jump => "left out: too far from their neighbours",
        Verdict.Stuck => "left out: the same value for too long",
        Verdict.TooOld => "left out: too old when they came",
        Verdict.ClockNotBelieved => "left out: the device's clock runs ahead",
        Verdict.BadCalibration => "left out: the probe's calibration is not accepted",
        Verdict.SetAside => "set aside: could not be judged",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "Not a verdict."),
    };

    /// <summary>Why something could not be used.</summary>
    public static string Of(RejectReason reason) => reason switch
    {
        RejectReason.NotParseable => "could not be read",
        RejectReason.TooLarge => "too large",
        RejectReason.UnknownUnit => "unknown unit",
        RejectReason.NoValue => "no value",
        RejectReason.RetainedReplay => "an old value sent again, time unknown",
        RejectReason.UnknownSensor => "no sensor with this topic",
        RejectReason.UnknownQuantity => "a quantity that is not kept",
        RejectReason.NotAllowed => "not allowed for this user",
        RejectReason.TimeNotBelieved => "a time that cannot be",
        _ => throw new ArgumentOutOfRangeException(nameof(reason), reason, "Not a reason."),
    };
}
