namespace FermentWatch.Kitchen.Probes;

/// <summary>
/// The ideal response of a pH electrode: ln 10 R T / F millivolts a pH, falling as the pH rises. Gas and Faraday constants are the
/// exact values of the SI of 2019.
/// </summary>
public static class Nernst
{
    private const double GasConstant = 8.314462618;
    private const double FaradayConstant = 96_485.33212;
    private const double ZeroCelsiusKelvin = 273.15;

    /// <summary>Millivolts a pH at a temperature, above absolute zero.</summary>
    public static double MillivoltsPerPh(double celsius)
    {
        if (!(celsius > -ZeroCelsiusKelvin && double.IsFinite(celsius)))
            throw new ArgumentOutOfRangeException(nameof(celsius), celsius, "A temperature above -273.15 C belongs here.");
        return Math.Log(10) * GasConstant * (celsius + ZeroCelsiusKelvin) / FaradayConstant * 1000;
    }
}
