using FermentWatch.Intake.Decoding;

namespace FermentWatch.Intake.Sources;

/// <summary>How documents write units beside a value: as SenML does, or as people and gateways do.</summary>
public static class UnitWords
{
    /// <summary>The unit meant, or null.</summary>
    public static MeasureUnit? Find(string word) => MeasureUnit.Find(word) ?? word.Trim().ToUpperInvariant() switch
    {
        "C" or "°C" or "ºC" or "℃" or "CEL" or "CELSIUS" or "DEGC" or "DEG C" => MeasureUnit.Celsius,
        "F" or "°F" or "ºF" or "℉" or "FAHRENHEIT" or "DEGF" or "DEG F" => MeasureUnit.Fahrenheit,
        "K" or "KELVIN" => MeasureUnit.Kelvin,
        "PH" => MeasureUnit.Ph,
        "MV" or "MILLIVOLT" or "MILLIVOLTS" => MeasureUnit.Millivolts,
        "V" or "VOLT" or "VOLTS" => MeasureUnit.Volts,
        "%" or "%RH" or "% RH" or "RH" or "PERCENT" => MeasureUnit.RelativeHumidity,
        _ => null,
    };
}
