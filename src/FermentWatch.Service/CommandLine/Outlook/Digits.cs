using System.Globalization;

namespace FermentWatch.Service.CommandLine.Outlook;

/// <summary>Figures with the digits worth printing, in the invariant culture.</summary>
internal static class Digits
{
    public static string Day(double? day) => day?.ToString("0.####", CultureInfo.InvariantCulture) ?? "";

    public static string Whole(double value) => value.ToString("0", CultureInfo.InvariantCulture);

    public static string Tenths(double value) => value.ToString("0.0", CultureInfo.InvariantCulture);

    public static string Hundredths(double value) => value.ToString("0.00", CultureInfo.InvariantCulture);

    public static string Ph(double value) => value.ToString("0.000", CultureInfo.InvariantCulture);

    public static string Acidity(double value) => value.ToString("0.0000", CultureInfo.InvariantCulture);
}
