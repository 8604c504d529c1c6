using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.Typed;
using static System.FormattableString;

namespace FermentWatch.Kitchen.Readings;

/// <summary>
/// What a sensor measures. The unit of a stored value follows from it; other units are converted at the door. The numbers stand in the
/// log and never change.
/// </summary>
public enum Quantity
{
    /// <summary>Degrees Celsius.</summary>
    Temperature = 1,

    /// <summary>pH, no unit.</summary>
    Ph = 2,

    /// <summary>Electrode potential in millivolts.</summary>
    Millivolts = 3,

    /// <summary>Relative humidity in per cent.</summary>
    Humidity = 4,
}

/// <content>
/// The catalogue: to add a quantity is to add a number above and an entry here. Symbols of units are those of the SenML units registry (RFC
/// 8428 section 12.1, RFC 8798 for mV); <c>degF</c> is ours. What a quantity can show where vegetables ferment, and what is no jump however
/// quiet the sensor is (the draught of a door, some steps of a coarse sensor, the steam of a pot), is common practice, no source.
/// </content>
public sealed partial class MeasuredQuantity
{
    /// <summary>Every quantity, each once, in the order in which they are named.</summary>
    public static IReadOnlyList<MeasuredQuantity> All { get; } =
    [
        new()
        {
            Key = Quantity.Temperature, Name = "temperature",
            Units =
            [
                new()
                {
                    Quantity = Quantity.Temperature, Symbol = "Cel", Label = "°C", ToStored = celsius => celsius,
                    Spellings = ["C", "°C", "ºC", "℃", "CEL", "CELSIUS", "DEGC", "DEG C"],
                    NameWords = ["tempc", "celsius"], NameEnding = "c", Likely = new(-30, 45),
                },
                new()
                {
                    Quantity = Quantity.Temperature, Symbol = "degF", Label = "°F", ToStored = CustomaryUnits.CelsiusFromFahrenheit,
                    Spellings = ["F", "°F", "ºF", "℉", "FAHRENHEIT", "DEGF", "DEG F"],
                    NameWords = ["tempf", "fahrenheit"], NameEnding = "f", Likely = new(45, 120),
                },
                new()
                {
                    Quantity = Quantity.Temperature, Symbol = "K", Label = "K", ToStored = kelvin => kelvin - 273.15,
                    Spellings = ["K", "KELVIN"], Likely = new(250, 320),
                },
            ],
            Range = new() { Low = -20, High = 50, LargestStep = 6, LeastJump = 2 },
            // One-wire parts: powered and not yet converted; no answer.
            Sentinels = [new(85.0) { RealBesideMoreThan = 70 }, new(-127.0)],
            LooksLike = new() { Words = ["temperature", "temp", "tempc", "tempf", "temperaturec", "celsius", "fahrenheit"], Within = new(-30, 60) },
            Typed = Amount.Celsius,
        },
        new()
        {
            Key = Quantity.Ph, Name = "ph",
            Units = [new() { Quantity = Quantity.Ph, Symbol = "pH", Label = "", ToStored = ph => ph, Spellings = ["PH"] }],
            Range = new() { Low = 2, High = 9, LargestStep = 0.7, LeastJump = 0.3 },
            IsByElectrode = true,
            LooksLike = new() { Words = ["ph"], Within = new(2, 9) },
            Say = ph => Invariant($"pH {ph:0.0#}"),
        },
        new()
        {
            Key = Quantity.Millivolts, Name = "millivolts",
            Units =
            [
                new()
                {
                    Quantity = Quantity.Millivolts, Symbol = "mV", Label = "mV", ToStored = millivolts => millivolts,
                    Spellings = ["MV", "MILLIVOLT", "MILLIVOLTS"],
                },
                new()
                {
                    Quantity = Quantity.Millivolts, Symbol = "V", Label = "V", ToStored = volts => volts * 1000,
                    Spellings = ["V", "VOLT", "VOLTS"], IsOfferedInPacks = false,
                },
            ],
            Range = new() { Low = -600, High = 600, LargestStep = 60, LeastJump = 18 },
            IsByElectrode = true,
            WhyItMustBeNamed = "Volts of something else than a pH electrode are not kept; the potential of an electrode is named millivolts.",
            Say = millivolts => Invariant($"{millivolts:0.#} mV"),
        },
        new()
        {
            Key = Quantity.Humidity, Name = "humidity",
            Units =
            [
                new()
                {
                    Quantity = Quantity.Humidity, Symbol = "%RH", Label = "%", ToStored = percent => percent,
                    Spellings = ["%", "%RH", "% RH", "RH", "PERCENT"],
                },
            ],
            Range = new() { Low = 0, High = 100, LargestStep = 40, LeastJump = 15 },
            // Air may stay saturated for weeks.
            MayStandStill = true,
            Say = percent => Invariant($"{percent:0} % humidity"),
        },
    ];
}
