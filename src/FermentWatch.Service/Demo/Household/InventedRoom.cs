using FermentWatch.Kitchen.Places;
using NodaTime;

namespace FermentWatch.Service.Demo.Household;

/// <summary>
/// A room of the invented household with a temperature for every instant: a level, a daily cycle, weather that comes and goes
/// in slow waves, a cold week, and a cook at noon and in the evening. The same instant gives the same temperature.
/// </summary>
/// <param name="Name">What the household calls it.</param>
/// <param name="Typical">What the household says of it.</param>
/// <param name="LevelCelsius">Mean of ordinary days, Celsius.</param>
/// <param name="DailySwingCelsius">Half of the way from the coldest to the warmest hour, Celsius.</param>
/// <param name="WeatherShare">How much of the weather comes in, 0 to 1.</param>
/// <param name="ColdWeekCelsius">How much colder it gets in the depth of the cold week, Celsius.</param>
/// <param name="CookingCelsius">How much warmer the evening's cooking makes it, Celsius.</param>
internal sealed record InventedRoom(
    string Name, TypicalTemperature Typical, double LevelCelsius, double DailySwingCelsius, double WeatherShare, double ColdWeekCelsius,
        double CookingCelsius)
{
    private const double WarmestHour = 17;
    private const double ColdestDayBeforeNow = 10;
    private const double ColdWeekWidthDays = 2.5;
    private const double NoiseCelsius = 0.06;

    /// <summary>Temperature at an instant, Celsius, in the sixteenths in which small probes report.</summary>
    /// <param name="at">The instant.</param>
    /// <param name="now">When the demo began, from which the cold week is counted.</param>
    /// <param name="zone">The household's zone.</param>
    public double CelsiusAt(Instant at, Instant now, DateTimeZone zone)
    {
        double day = at.ToUnixTimeMilliseconds() / 86_400_000.0;
        double hour = at.InZone(zone).TimeOfDay.TickOfDay / (double)NodaConstants.TicksPerHour;
        double weather = (3.0 * Math.Sin(2 * Math.PI * day / 9.3)) + (1.8 * Math.Sin((2 * Math.PI * day / 5.1) + 1));
        double cold = Bell(((now - at).TotalDays - ColdestDayBeforeNow) / ColdWeekWidthDays);
        double cooking = (0.6 * Bell((hour - 12.5) / 0.7)) + Bell((hour - 18.5) / 0.9);
        double celsius = LevelCelsius
            + (DailySwingCelsius * Math.Cos(2 * Math.PI * (hour - WarmestHour) / 24))
            + (WeatherShare * weather) - (ColdWeekCelsius * cold) + (CookingCelsius * cooking) + (NoiseCelsius * Noise(at));
        return Math.Round(celsius * 16) / 16;
    }

    private static double Bell(double x) => Math.Exp(-x * x);

    /// <summary>A number from -1 to 1 that looks random and is not: the instant's seconds, stirred (SplitMix64, Steele et al. 2014).</summary>
    private double Noise(Instant at)
    {
        ulong stirred;
        unchecked
        {
            stirred = ((ulong)at.ToUnixTimeSeconds() * 0x9E3779B97F4A7C15) + ((ulong)Name.Length * 0xD1B54A32D192ED03);
            stirred = (stirred ^ (stirred >> 30)) * 0xBF58476D1CE4E5B9;
            stirred = (stirred ^ (stirred >> 27)) * 0x94D049BB133111EB;
            stirred ^= stirred >> 31;
        }
        return ((stirred >> 11) / (double)(1UL << 52)) - 1;
    }
}
